"""Was ein deutschsprachiger Richter prüfte, ehe er unterschriebe. Common practice of ring critiques, no source.

- Das Tier heißt Rüde oder Hündin; was vor dem Wort steht, beugt sich mit ihm (maskuliner Rüde, feminine Hündin).
- Hauptwörter stehen groß, auch mitten im Satz; sonst nichts.
- Ohne Artikel trägt das Eigenschaftswort die starke Endung: guter Vortritt, gute Brusttiefe, volles Pigment,
  dunkle Augen; im Dativ: von guter Substanz, mit schwerem Knochenbau, mit kurzem Gebäude.
- Hinter dem Hauptwort bleibt es ungebeugt: Kruppe zu flach, Ohren klein.
- Zusammensetzungen sind ein Wort ohne Bindestrich: Vorhandwinkelung, Widerristhöhe.
- Steigerung mit Umlaut, wo die Sprache ihn will: länger, kürzer, schwächer, größer, höher; ß nach langem Vokal.
- Dezimalkomma; Ordnungszahlen gebeugt (erster Platz).
"""

import re

from tests.critique.writing import everything_said, full, short, write

NOUNS = (
    "rüde|hündin|substanz|knochenbau|gebäude|proportionen|kondition|gewicht|muskulatur|schädel|stopp|fang|"
    "fangpartie|lefzen|zahnschluss|scherengebiss|zangengebiss|vorbiss|rückbiss|kreuzbiss|gebiss|zahn|zähne|augen|"
    "lider|ohren|hals|kehle|kehlhaut|widerrist|oberlinie|lendenpartie|kruppe|brust|brusttiefe|vorbrust|rippen|"
    "unterlinie|rute|vorhand|schulter|oberarm|ellenbogen|vorderpfoten|vordermittelfuß|pfoten|hinterhand|"
    "oberschenkel|sprunggelenke|hintermittelfuß|afterkrallen|vortritt|schub|kommen|gehen|rückenlinie|passgang|"
    "haarkleid|haar|farbe|abzeichen|weißanteil|pigment|widerristhöhe|brustumfang|hoden|wesen|platz|fehler|standard|"
    "länge|höhe|breite|größe"
)


def test_the_animal_is_a_ruede_or_a_huendin():
    assert write("de", marks={"substance": 0}) == "Rüde von genau der richtigen Substanz."
    assert write("de", sex="bitch", marks={"substance": 0}) == "Hündin von genau der richtigen Substanz."


def test_what_stands_before_the_animal_takes_its_gender():
    assert short("de", "sex-type", "clear") == "maskuliner Rüde"
    assert short("de", "sex-type", "clear", "bitch") == "feminine Hündin"
    assert short("de", "sex-type", "reversed") == "hündinnenhafter Rüde"
    assert short("de", "sex-type", "reversed", "bitch") == "rüdenhafte Hündin"


def test_nouns_are_capitals_everywhere():
    small = re.compile(rf"\b({NOUNS})\b")
    assert not [text for text in everything_said("de") if small.search(text)]


def test_a_sentence_does_not_capitalise_an_adjective_in_its_middle():
    text = write("de", standard="boxer", marks={"skull": 0, "reach": 0, "drive": 0}, choices={"eye-colour": "dark"})
    middle = [word for sentence in text.split(". ") for word in re.findall(r"[\w-]+", sentence)[1:]]
    assert not [word for word in middle if word[0].isupper() and re.search(r"(guter|gute|dunkle|schöne)$", word)]


def test_strong_endings_without_an_article():
    assert short("de", "reach", 0) == "guter Vortritt"  # masculine
    assert short("de", "chest-depth", 0) == "gute Brusttiefe"  # feminine
    assert short("de", "pigment", "full") == "volles Pigment"  # neuter
    assert short("de", "eye-colour", "light") == "helle Augen"  # plural


def test_dative_endings_after_von_and_mit():
    assert short("de", "substance", 2) == "mit zu schwerem Knochenbau"  # masculine
    assert short("de", "proportions", -3) == "mit viel zu kurzem Gebäude"  # neuter
    assert short("de", "muscle", -1) == "mit etwas weicher Muskulatur"  # feminine
    assert short("de", "proportions", 0) == "von korrekten Proportionen"  # plural


def test_a_preposition_is_never_followed_by_a_nominative():
    wrong = re.compile(r"\b(mit|von) (etwas |zu |viel zu )*\w+(e|es) [A-ZÄÖÜ]")
    assert not [text for text in everything_said("de") if wrong.search(text)]


def test_behind_its_noun_an_adjective_is_not_inflected():
    assert [short("de", "croup", mark) for mark in (-1, -2, -3)] == [
        "Kruppe etwas flach",
        "Kruppe zu flach",
        "Kruppe viel zu flach",
    ]
    assert short("de", "ear-size", -1) == "Ohren etwas klein"


def test_compounds_are_one_word():
    assert short("de", "front-angulation", -2) == "Vorhandwinkelung zu steil"
    assert short("de", "rear-angulation", -2) == "Hinterhandwinkelung zu steil"
    broken = re.compile(r"[a-zäöüß]-[A-ZÄÖÜ]|Vorhand [Ww]inkelung|Widerrist [Hh]öhe|Brust [Uu]mfang")
    assert not [text for text in everything_said("de") if broken.search(text)]


def test_comparatives_take_their_umlaut():
    assert "länger" in full("de", "neck", 1)
    assert "kürzer" in full("de", "neck", -1)
    assert "schwächer" in full("de", "drive", -1)
    assert "größer" in full("de", "ear-size", 1)
    wrong = re.compile(r"\b(langer|kurzer|schwacher|großer|hocher|gröser|grosser) (als|im)")
    assert not [text for text in everything_said("de") if wrong.search(text)]


def test_eszett_stands_after_a_long_vowel_only():
    wrong = re.compile(r"Gebiß|Vorbiß|Fuss|gross|ausser|Weissanteil|Mass\b")
    assert not [text for text in everything_said("de") if wrong.search(text)]


def test_a_number_has_a_decimal_comma():
    assert write("de", numbers={"height": 62.5}) == "Rüde, Höhe am Widerrist beträgt 62,5 cm."


def test_one_tooth_fehlt_and_several_fehlen():
    assert "fehlt Zahn 105 (P1 oben rechts)" in write("de", teeth_missing=[105])
    assert "fehlen die Zähne 105" in write("de", teeth_missing=[105, 411])


def test_grade_and_place_are_the_trades_words():
    assert write("de", grade="excellent", place=1) == "Vorzüglich, erster Platz."
    assert write("de", grade="disqualified", reason="beißt") == "Disqualifiziert: beißt."
    assert write("de", grade="cannot-be-judged") == "Ohne Bewertung."
