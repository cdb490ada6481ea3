"""Reads marks back out of a critique, knowing nothing of the lexicon: its own words for nouns, ends and degrees.

One line a point: what names it | what says too little | what says too much | what says that it is right.
"""

import re
from dataclasses import dataclass

NO_DEGREE = 2
NOTE = re.compile(r" \([^)]*\)")


@dataclass(frozen=True)
class Language:
    joints: str
    small: str
    great: str
    points: str


ENGLISH = Language(
    joints=r", | and ",
    small=r"slight",
    great=r"much too|\bfar\b|severely|badly|gross",
    points=r"""
    substance         | \bbone|substance        | \blight              | heav               | good|right
    proportions       | in body|proportions     | short              | long               | correct|asks
    condition         | \blean|weight|condition | \blean|less weight   | overw|more weight  | good|right
    muscle            | muscle                  | soft               | over-|heav         | \bwell
    skull             | skull                   | narrow             | broad              | well-|right
    stop              | \bstop                  | shallow            | abrupt             | well-|should
    muzzle-length     | muzzle                  | short              | long(?!t)          | of good|asked
    muzzle-depth      | foreface                | snip               | coarse             | strong|strength
    lips              | \blips                  | tight              | loose              | fit
    ear-set           | \bears                  | low                | high               | set
    ear-size          | \bears .*(small|large|size)|(small|large) ears | small | large     | size
    neck              | neck$|^(\w+ with )?neck | short              | long               | good|right
    throat            | throat                  | tight              | throaty|looser     | clean
    withers           | withers                 | flat               | prominent          | well-|should
    topline           | (?<!moving )topline(?!.*move) | dip           | roach              | firm|runs
    loin              | loin                    | short              | long               | coupled|right
    croup             | croup                   | flat               | steep              | well-|slop
    chest-depth       | \bchest                 | shallow            | deep(?!ly)         | good|right
    forechest         | forechest               | lacking|less       | overdone|more      | well-|should
    ribs              | \bribs                  | flat               | barrel             | sprung
    underline         | underline               | level              | tucked             | good|should
    tail-set          | tail .*set|set tail     | low                | high               | well-|right
    tail-carriage     | tail .*carried|carried tail | low            | ga[iy]             | well-|should
    tail-length | \btail | short | (?<!no )longer|long tail|too long | of good|just the right
    front-angulation  | front angulation|angulated front | straight  | over-|pronounced   | good|should
    shoulder          | shoulder                | upright            | sloping            | laid
    upper-arm         | upper arm               | short              | long               | good|right
    elbows            | elbows                  | pinch              | out                | fitting|placed
    forelegs          | front feet              | toeing             | out                | forward|ahead
    pasterns          | (?<!rear )pasterns      | upright            | sloping            | good|should
    feet              | (?<!front )\bfeet       | tight              | splayed            | knit
    rear-angulation   | rear angulation|angulated rear | straight   | over-|pronounced   | good|should
    thigh             | thigh                   | narrow             | loaded             | well-|right
    hocks             | \bhock|-hocked          | bowed              | cow-|turned in     | parallel|should
    rear-pasterns     | rear pasterns           | short              | long               | good|right
    reach             | reach                   | short              | over|longer        | good|all
    drive             | drive                   | weak               | overdone|stronger  | sound|all
    coming            | front action|front .*coming | narrow         | wide               | true
    going             | hind action             | close              | wide               | true
    moving-topline    | moving topline|topline .*move | dip           | roach             | steady
    coat-length | \bcoat | short | longer|long coat|too long | of good length|right length
    coat-density      | \bcoat                  | thin               | profuse            | dens
    coat-wave         | \bcoat                  | flat               | curl               | lying|lies
    markings          | markings                | sparse             | extensive          | good|should
    white             | \bwhite                 | little|less        | too much|more      | correct|right
    """,
)

FRENCH = Language(
    joints=r", | et ",
    small=r"\bun peu\b|légèrement",
    great=r"beaucoup|fortement",
    points=r"""
    substance         | ossature|substance      | lég.re? d'os|léger d'os | lourde?       | bonne|exactement
    proportions       | de corps|proportions    | courte?            | longu?e?\b         | correctes|veut
    condition         | maigre|gras|condition   | maigre             | gras               | bonne|souhaite
    muscle            | muscl|musculature       | molle              | lourde             | musclée?
    skull             | crâne                   | étroit             | (trop|peu|plus) large | proportion|largeur
    stop              | \bstop                  | effacé             | accentué           | marqué
    muzzle-length     | museau                  | \bcourt\b          | \blong\b           | longueur
    muzzle-depth      | museau                  | pointu             | grossier           | puissant
    lips              | lèvres                  | serrées            | lâches             | ajustées
    ear-set           | oreilles .*attach       | bas\b              | haut\b             | bien|bonne
    ear-size          | oreilles                | petites            | grandes            | taille
    neck              | encolure                | courte             | longue\b           | longueur
    throat            | gorge                   | serrée             | chargée            | sèche
    withers           | garrot                  | \bplat\b           | saillant           | sorti
    topline           | dessus                  | ensellé            | voussé             | ferme
    loin              | \brein\b                | \bcourt\b          | \blong\b           | longueur
    croup             | croupe                  | plate              | avalée             | inclinée
    chest-depth       | (?<!avant-)(?<!tour de )poitrine | haute|moins    | profonde          | descendue
    forechest         | avant-poitrine          | effacée            | proéminente        | développée
    ribs              | côtes                   | plates             | tonneau|rondes     | cintrées
    underline         | ligne ventrale          | horizontale        | relevée            | correcte|veut
    tail-set          | queue .*attachée        | bas\b              | haut\b             | bien|bonne
    tail-carriage     | queue .*portée          | bas\b              | gaiement           | bien|convient
    tail-length       | queue                   | (trop|peu|plus) courte | longue\b       | longueur
    front-angulation  | angulation antérieure   | ouverte            | fermée             | bonne|doit
    shoulder          | épaule                  | droite             | oblique            | inclinée
    upper-arm         | \bbras\b                | \bcourt\b          | \blong\b           | longueur
    elbows            | coudes                  | serrés             | décollés           | au corps|placés
    forelegs          | antérieurs              | cagneux            | panards            | aplomb
    pasterns          | métacarpes              | droits             | inclinés           | corrects|orientés
    feet              | \bpieds                 | serrés             | ouverts            | formés|fermés
    rear-angulation   | angulation postérieure  | ouverte            | fermée             | bonne|doit
    thigh             | cuisses                 | étroites           | chargées           | largeur
    hocks             | jarrets                 | cambrés            | clos               | parallèles|aplomb
    rear-pasterns     | métatarses              | courts             | longs              | longueur
    reach             | amplitude               | réduite            | excessive|grande   | bonne|telle
    drive             | poussée                 | faible             | excessive|forte\b  | bonne|telle
    coming            | devant                  | serrée?            | ouverte?           | correcte?
    going             | derrière                | serrée?            | ouverte?           | correcte?
    moving-topline    | \bdos\b                 | plongeant          | arrondi            | stable
    coat-length       | \bpoil                  | \bcourt\b          | \blong\b           | longueur
    coat-density      | \bpoil                  | clairsemé          | abondant           | densité
    coat-wave         | \bpoil                  | \bplat\b           | frisé              | couché
    markings          | marques                 | réduites           | étendues           | correctes|réparties
    white             | \bblanc                 | réduit             | étendu             | quantité
    """,
)

GERMAN = Language(
    joints=r", | und ",
    small=r"\betwas\b|\bleicht\b|leichtem Über",
    great=r"viel zu|erheblich|(?<!etwas )(?<!zu )\bstark\b|starkem",
    points=r"""
    substance         | Knochenbau|Substanz     | leicht             | schwer             | guter|genau
    proportions       | Gebäude|Proportionen    | kurzem|kürzer      | \blangem|\bläng          | korrekten|genau
    condition         | Kondition|gewicht|Gewicht als | mager|weniger | Über|mehr         | guter|richtigen
    muscle            | Muskulatur              | weich              | schwer             | guter|genau
    skull             | Schädel                 | schmal             | breit(er)?\b              | proportion|Breite
    stop              | Stopp                   | flach              | steil              | ausgeprägt
    muzzle-length     | Fang\b                  | kurz|kürzer        | lang\b|länger      | Länge
    muzzle-depth      | Fangpartie              | spitz              | grob|gröber        | kräftig
    lips              | Lefzen                  | straff             | lose               | liegen?
    ear-set           | Ohrenansatz|Ohren .*gesetzt | tief           | hoch|höher         | angesetzt
    ear-size          | Ohren\b                 | klein              | groß|größer        | Größe
    neck              | Hals                    | kurz|kürzer        | lang\b|länger      | Länge
    throat            | Kehl                    | straff             | lose               | trocken
    withers           | Widerrist\b(?!.*cm)     | flach              | markant            | ausgeprägt
    topline           | Oberlinie               | durchhängend       | aufgewölbt         | fest|verläuft
    loin              | Lendenpartie            | kurz|kürzer        | lang\b|länger      | Länge
    croup             | Kruppe                  | flach              | abfallend          | gelagert|Neigung
    chest-depth       | Brusttiefe|Brust genau  | gering             | groß|größer        | gute|Tiefe
    forechest         | Vorbrust                | schwach|schwächer  | übertrieben|stärker | entwickelt
    ribs              | Rippen                  | flach              | tonnen             | gewölbt
    underline         | Unterlinie              | gerade             | aufgezogen         | korrekt|verläuft
    tail-set          | Rutenansatz|Rute .*gesetzt | tief            | hoch|höher         | angesetzt
    tail-carriage     | Rute .*getragen         | tief               | hoch|höher         | gut|gewünscht
    tail-length       | Rute\b                  | kurz|kürzer        | lang\b|länger      | Länge
    front-angulation  | Vorhand                 | steil              | über|stärker       | gewinkelt
    shoulder          | Schulter                | steil              | schräg             | gelagert
    upper-arm         | Oberarm                 | kurz|kürzer        | lang\b|länger      | Länge
    elbows            | Ellenbogen              | eng                | ausgedreht         | liegen?
    forelegs          | Vorderpfoten            | zeheneng           | zehenweit          | gerade
    pasterns          | Vordermittelfuß         | steil              | schräg             | korrekt|gewünscht
    feet              | Pfoten                  | \benge?r?\b        | gespreizt          | geschlossen
    rear-angulation   | Hinterhand              | steil              | überwin|stärker gew | gewinkelt
    thigh             | Oberschenkel            | schmal             | überladen|wuchtiger | Breite
    hocks             | Hinterhand|Sprunggelenke | fassbeinig        | kuhhessig          | parallel|stehen
    rear-pasterns     | Hintermittelfuß         | kurz|kürzer        | lang\b|länger      | Länge
    reach             | Vortritt                | kurz|kürzer        | übertrieben|weiter | guter|Weite
    drive             | Schub                   | schwach|schwächer  | übertrieben|stärker | guter|Stärke
    coming            | im Kommen               | enge?r?\b          | weit               | korrekt
    going             | im Gehen                | enge?r?\b          | weit               | korrekt
    moving-topline    | Rückenlinie             | nachgebend         | aufgekrümmt        | ruhig
    coat-length       | Haarkleid               | kurz|kürzer        | lang\b|länger      | Länge
    coat-density      | Haarkleid               | dünn               | üppig              | Dicht|dicht
    coat-wave         | Haar\b                  | glatt              | lockig             | liegend|liegt
    markings          | Abzeichen               | spärlich           | ausgedehnt         | korrekt|Ausdehnung
    white             | Weiß                    | gering             | groß|größer        | korrekt|richtigen
    """,
)

SPANISH = Language(
    joints=r", | y ",
    small=r"ligeramente|\balgo\b",
    great=r"excesivamente|exageradamente|\bmucho\b|\bmuy\b",
    points=r"""
    substance         | de hueso|sustancia      | fin[oa]            | pesad[oa]          | buena|exactamente
    proportions       | de cuerpo|proporciones  | cort[oa]           | larg[oa]           | correctas|pide
    condition         | delgad|gord|condición   | delgad             | gord               | buena|desea
    muscle            | muscul                  | floj[oa]           | cargad[oa]         | musculad[oa]
    skull             | cráneo                  | estrecho           | ancho              | proporcionado|anchura
    stop              | \bstop                  | suave              | brusco             | definido
    muzzle-length     | hocico                  | corto              | largo              | longitud
    muzzle-depth      | hocico                  | afilado            | tosco              | fuerte|fuerza
    lips              | labios                  | apretados          | sueltos            | ajustados
    ear-set           | orejas .*(inser)        | baja               | alta               | bien|correcta
    ear-size          | orejas                  | pequeñas           | grandes            | tamaño
    neck              | cuello                  | corto              | largo              | longitud
    throat            | garganta                | tirante            | suelta             | seca
    withers           | \bcruz(?!.*cm)          | plana              | prominente         | marcada
    topline           | línea dorsal            | ensillada          | arqueada           | firme|discurre
    loin              | lomo                    | corto              | largo              | longitud
    croup | grupa | plana | (mente|demasiado|más) caída | dispuesta|con la caída
    chest-depth | (?<!ante)pecho | falto|menos | (mente|demasiado|más) profundo | descendido|profundidad
    forechest         | antepecho               | escaso             | prominente         | desarrollado
    ribs              | costillas               | planas             | tonel|redondas     | arqueadas
    underline         | línea ventral           | horizontal         | recogida           | correcta|discurre
    tail-set          | cola .*inser            | baja               | alta               | bien|correcta
    tail-carriage     | cola .*llevada          | baja               | alta               | bien|debe
    tail-length       | \bcola                  | (mente|demasiado|más) corta | larga\b    | longitud
    front-angulation  | angulación delantera    | abierta            | cerrada            | buena|debe
    shoulder          | hombro                  | recto              | oblicuo            | colocado
    upper-arm         | brazo                   | corto              | largo              | longitud
    elbows            | codos                   | cerrados           | abiertos           | pegados|colocados
    forelegs          | manos                   | metidas            | vueltas            | aplomadas|rectas
    pasterns          | metacarpos              | \brectos             | oblicuos           | correctos|colocados
    feet              | \bpies                  | apretados          | abiertos           | compactos
    rear-angulation   | angulación trasera      | abierta            | cerrada            | buena|debe
    thigh             | muslos                  | estrechos          | recargados         | anchura
    hocks             | corvejones              | abiertos           | de vaca|cerrados   | paralelos|aplomados
    rear-pasterns     | metatarsos              | cortos             | largos             | longitud
    reach             | alcance                 | corto              | exagerado|largo    | buen|amplio
    drive             | empuje                  | débil              | exagerado|más fuerte | buen|fuerte
    coming            | por delante             | cerrad[oa]         | abiert[oa]         | correct[oa]
    going             | por detrás              | cerrad[oa]         | abiert[oa]         | correct[oa]
    moving-topline    | \bdorso                 | hundido            | encorvado          | estable
    coat-length       | \bpelo                  | corto              | largo              | longitud
    coat-density      | \bpelo                  | \bralo             | abundante          | dens
    coat-wave         | \bpelo                  | liso               | rizado             | asentado
    markings          | marcas                  | escasas            | extensas           | correctas|repartidas
    white             | \bblanco                | escaso             | extenso            | cantidad
    """,
)

LANGUAGES = {"en": ENGLISH, "fr": FRENCH, "de": GERMAN, "es": SPANISH}


def marks_read(sentences, language):
    """The marks that a critique's sentences speak of. Two readings of one fragment are an error of the words."""
    words = LANGUAGES[language]
    table = [[part.strip() for part in re.split(r" \| ", line)] for line in words.points.strip().splitlines()]
    found = {}
    for fragment in (part for text in sentences for part in re.split(words.joints, NOTE.sub("", text).rstrip("."))):
        readings = {row[0]: mark for row in table if (mark := _mark(fragment, row, words)) is not None}
        assert len(readings) <= 1, (fragment, readings)
        assert not readings.keys() & found.keys(), (fragment, readings)
        found |= readings
    return found


def _mark(fragment, row, words):
    _, named, low, high, right = row
    if not _says(named, fragment):
        return None
    if _says(low, fragment):
        return -_degree(fragment, words)
    if _says(high, fragment):
        return _degree(fragment, words)
    return 0 if _says(right, fragment) else None


def _degree(fragment, words):
    if _says(words.great, fragment):
        return 3
    return 1 if _says(words.small, fragment) else NO_DEGREE


def _says(pattern, fragment):
    return re.search(pattern, fragment, re.IGNORECASE) is not None
