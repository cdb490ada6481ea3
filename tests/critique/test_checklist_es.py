"""Lo que un juez de lengua española comprobaría antes de firmar. Common practice of ring critiques, no source.

- El animal es «macho» o «hembra»; lo que se dice de él concuerda: fina de hueso, primera clasificada.
- El adjetivo concuerda con la parte: grupa caída, stop suave, costillas planas, metacarpos rectos.
- «y» ante i o hi sería «e»: ningún fragmento empieza así; «más … de lo», nunca «más … que deseable».
- Apócope: buen alcance, primer clasificado; sin ella en femenino: buena angulación, primera clasificada.
- Falsos amigos: largo es de longitud, grande de tamaño; pelo y no «abrigo»; hocico y no «bozal»; cruz y no «cruces»;
  manos son los pies delanteros.
- Acentos en su sitio; coma decimal; la diéresis y la tilde no se pierden al poner mayúscula.
"""

import re

from tests.critique.writing import everything_said, full, short, write


def test_the_animal_is_a_macho_or_a_hembra():
    assert write("es", marks={"substance": 0}) == "Macho con exactamente la sustancia deseada."
    assert write("es", sex="bitch", marks={"substance": 0}) == "Hembra con exactamente la sustancia deseada."


def test_what_is_said_of_the_animal_agrees_with_it():
    for point, mark, dog, bitch in [
        ("substance", -1, "ligeramente fino de hueso", "ligeramente fina de hueso"),
        ("substance", 2, "demasiado pesado de hueso", "demasiado pesada de hueso"),
        ("proportions", 1, "ligeramente largo de cuerpo", "ligeramente larga de cuerpo"),
        ("condition", -2, "demasiado delgado", "demasiado delgada"),
        ("muscle", 0, "bien musculado", "bien musculada"),
        ("coming", 0, "correcto por delante", "correcta por delante"),
        ("going", -3, "excesivamente cerrado por detrás", "excesivamente cerrada por detrás"),
    ]:
        assert (short("es", point, mark), short("es", point, mark, "bitch")) == (dog, bitch)


def test_an_adjective_agrees_with_the_part_it_speaks_of():
    assert short("es", "croup", 2) == "grupa demasiado caída"  # feminine
    assert short("es", "skull", -2) == "cráneo demasiado estrecho"  # masculine
    assert short("es", "ribs", -2) == "costillas demasiado planas"  # feminine plural
    assert short("es", "pasterns", -2) == "metacarpos demasiado rectos"  # masculine plural


FEMININE = "garganta|cruz|grupa|cola"
FEMININE_PLURAL = "costillas|orejas|marcas"
MASCULINE = "cráneo|stop|hocico|cuello|lomo|pecho|antepecho|hombro|brazo|alcance|empuje|dorso|pelo|blanco"
MASCULINE_PLURAL = "labios|codos|metacarpos|pies|muslos|corvejones|metatarsos"
WRONG_END = {
    "feminine": (FEMININE, r"os?$|as$"),
    "feminine plural": (FEMININE_PLURAL, r"os$|[^s]$"),
    "masculine": (MASCULINE, r"as?$|os$"),
    "masculine plural": (MASCULINE_PLURAL, r"as$|[^s]$"),
}


def test_a_fault_of_a_part_ends_as_its_gender_and_number_want():
    for nouns, wrong in WRONG_END.values():
        for text in set(everything_said("es")):
            found = re.fullmatch(rf"({nouns}) (?:ligeramente|demasiado|excesivamente) (\w+)", text)
            if found:
                assert not re.search(wrong, found[2]), text


def test_no_fragment_begins_so_that_y_would_have_to_be_e():
    assert not [text for text in everything_said("es") if re.match(r"h?i(?!e)", text, re.I)]


def test_a_comparison_is_made_with_de_lo():
    assert full("es", "croup", 1) == "grupa ligeramente más caída de lo que pide el estándar"
    wrong = re.compile(r"(más|menos) \w+ (que (lo )?)?(deseable|admisible)")
    assert not [text for text in everything_said("es") if wrong.search(text)]


def test_bueno_and_primero_are_cut_before_a_masculine_noun_only():
    assert short("es", "reach", 0) == "buen alcance"
    assert short("es", "front-angulation", 0) == "buena angulación delantera"
    wrong = re.compile(r"\b(bueno|primero|tercero) \w|\bbuen (\w+a|calidad|longitud)\b")
    assert not [text for text in everything_said("es") if wrong.search(text)]


def test_there_are_no_false_friends():
    assert short("es", "ear-size", 2) == "orejas demasiado grandes"
    assert short("es", "muzzle-length", 2) == "hocico demasiado largo"
    false = re.compile(r"orejas .*larg|abrigo|bozal|\bgrupo\b|hombros|asumir|severo|\bfirma\b|\bcoche\b")
    assert not [text for text in everything_said("es") if false.search(text)]


def test_accents_stand_where_they_belong():
    lost = re.compile(r"\b(mas|craneo|linea|caida|facil|debil|angulacion|insercion|pigmentacion|parpados|torax)\b")
    assert not [text for text in everything_said("es") if lost.search(text)]


def test_an_accented_letter_keeps_its_accent_as_a_capital():
    assert write("es", place=10) == "Décimo clasificado."


def test_place_and_grade_agree_with_the_animal():
    assert write("es", sex="bitch", grade="excellent", place=1) == "Excelente, primera clasificada."
    assert write("es", grade="disqualified", reason="muerde") == "Descalificado: muerde."
    assert write("es", sex="bitch", grade="cannot-be-judged") == "No puede ser juzgada."


def test_a_number_has_a_decimal_comma():
    assert "62,5 cm" in write("es", numbers={"height": 62.5})


def test_teeth_are_masculine():
    assert "del diente 105 (P1 superior derecho)" in write("es", teeth_missing=[105])
    assert "de los dientes 105" in write("es", teeth_missing=[105, 411])
