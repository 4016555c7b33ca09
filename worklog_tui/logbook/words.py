"""Words of the trade brought to one form, so that two tellings of one thing can be compared.

The tables are common practice: what is called one way on one side of the ocean and another way on the other.
"""

from __future__ import annotations

import re
from functools import lru_cache


def word_set(text: str) -> frozenset[str]:
    """The words of a text as a set."""
    return frozenset(text.split())


SAME = {
    "carb": "carburettor", "carburetor": "carburettor", "carbie": "carburettor", "mag": "magneto", "tire": "tyre",
    "ground": "earth", "rad": "radiator", "kerosene": "paraffin", "transmission": "gearbox", "wrist": "gudgeon",
    "comp": "compression", "cyl": "cylinder", "pot": "cylinder", "temp": "temperature", "aluminum": "aluminium",
    "sparkplug": "plug", "gasoline": "petrol", "gas": "petrol", "batt": "battery", "gskt": "gasket", "hd": "head",
    "genny": "generator", "alternator": "generator", "dynamo": "generator", "motor": "engine", "muffler": "silencer",
    "hood": "bonnet", "fender": "wing", "retorque": "torque", "gage": "gauge", "dizzy": "distributor",
    "cond": "condenser", "pts": "point", "ndl": "needle", "impellor": "impeller", "gasoil": "diesel",
    "carburetter": "carburettor", "carbureter": "carburettor", "carburator": "carburettor",
    "brg": "bearing", "brgs": "bearing", "spdl": "spindle", "ign": "ignition", "exh": "exhaust", "elec": "electric",
    "o-ring": "oring", "fly": "flywheel",
}  # fmt: skip
PHRASES = (
    ("valve cover", "rocker cover"), ("oil pan", "sump"), ("spark plug", "plug"), ("sparking plug", "plug"),
    ("fly wheel", "flywheel"), ("crank case", "crankcase"), ("back plate", "backplate"), ("set screw", "grub screw"),
    ("fuel tap", "petrol tap"), ("fuel cock", "petrol tap"), ("hand brake", "handbrake"),
    ("parking brake", "handbrake"), ("o ring", "oring"), ("tappets", "valve clearance"),
    ("valve lash", "valve clearance"), ("pull start", "recoil"),
)  # fmt: skip
SIDES = {
    "left": "left", "right": "right", "lh": "left", "rh": "right", "l/h": "left", "r/h": "right", "nearside": "left",
    "offside": "right", "front": "front", "rear": "rear", "back": "rear", "inlet": "inlet", "intake": "inlet",
    "exhaust": "exhaust", "upper": "upper", "top": "upper", "lower": "lower", "bottom": "lower", "inner": "inner",
    "outer": "outer", "primary": "primary", "secondary": "secondary",
}  # fmt: skip
_TO_TWELVE = "zero one two three four five six seven eight nine ten eleven twelve"
_TO_EIGHTH = "zeroth first second third fourth fifth sixth seventh eighth"
NUMBERS = {word: str(n) for n, word in enumerate(_TO_TWELVE.split())}
ORDINALS = {word: str(n) for n, word in enumerate(_TO_EIGHTH.split())}
COUNTED = word_set(
    "number no cylinder plug injector valve barrel coil lead lobe journal bearing ring stage bank wheel "
    "cell phase tooth"
)
DENIALS = word_set(
    "no not never without isn't aren't doesn't don't didn't won't can't cannot wasn't ain't nt isnt arent doesnt dont "
    "didnt wont cant wasnt aint couldn't couldnt hasn't hasnt"
)
FILLER = word_set(
    "number the a an of on in to is it its it's was were and for with that this these those my our your his her "
    "their at some be are or one got get gets getting have has had need needs needed want wants wanted "
    "going gonna go do does done did will would should could can must may might new real proper decent "
    "fresh replacement replace old temporary temp spare another other again still yet now then here there "
    "just really actually bit little wee set unit itself thing stuff so as if up out off by from into "
    "onto back down over round around under when while till until after before i i'm i'd i'll you we he "
    "they more less all both any every each same also too side hand borrowed bodge bodged stop-gap "
    "stopgap makeshift home-made homemade correct right-size ordered order buy pick find out about s t ll "
    "re ve"
)
_ENDS = ("ings", "ing", "ed", "es", "s")


@lru_cache(maxsize=20_000)
def stem(word: str) -> str:
    """A word without its ending: gaskets and gasket, leaking and leaks give one form."""
    for end in _ENDS:
        if word.endswith(end) and not word.endswith("ss") and len(word) - len(end) >= (3 if end == "s" else 4):
            word = word[: -len(end)]
            break
    if len(word) > 4 and word.endswith("y"):
        return word[:-1] + "i"
    return word[:-1] if len(word) > 4 and word.endswith("e") else word


_SAME_STEMS = {stem(said): stem(SAME[said]) for said in SAME}
_DRAWN_OUT = re.compile(r"([a-z])\1{2,}")
_WORD = re.compile(r"[^\W_][\w./'-]*")
_JOINED = re.compile(r"(?<=[a-z])-(?=[a-z])")


@lru_cache(maxsize=20_000)
def raw_words(text: str) -> tuple[str, ...]:
    """The words in lower case, phrases of two oceans brought to one."""
    plain = _DRAWN_OUT.sub(r"\1\1", text.lower()).replace("\u2019", "'").replace("#", " number ").replace("&", " and ")
    plain = _JOINED.sub(" ", plain)
    for said, same in PHRASES:
        if said in plain:
            plain = re.sub(rf"\b{said}", same, plain)
    return tuple(w.strip(".-/'").removesuffix("'s") for w in _WORD.findall(plain))


@lru_cache(maxsize=20_000)
def one_form(word: str) -> str:
    """The form in which a word is compared."""
    return _SAME_STEMS.get(stem(word), stem(SAME.get(word, word)))
