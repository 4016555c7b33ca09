"""Files of a person's own with something wrong in each; the line that must be named ends in `# here`."""

from __future__ import annotations

from typing import NamedTuple


class Broken(NamedTuple):
    """A file of a person's own with something wrong in it."""

    file: str
    text: str
    says: str
    cure: str


def rule(says: str, more: str = "") -> str:
    return f'[[rule]]\nid = "own.slack"\nsays = \'{says}\' # here\ngives = {{ kind = "finding" }}\n{more}'


PUMP = """
system = "pump"
[[fault]]
id = "pump.dry"
name = "no water to prime it"
prior = 0.2
repair = { say = "prime the pump", minutes = 5 }
look = { say = "look into the priming cup", minutes = 1 }
[[symptom]]
id = "no_water"
says = "it moves no water"
leak = 0.02
heard = { parts = ["pump"], states = ["dry"] }
causes = { "pump.dry" = 0.9 }
[[check]]
id = "pump.gauge"
say = "read the suction gauge"
minutes = 2
outcomes = ["good", "none"]
base = [0.9, 0.1]
p = { "pump.dry" = [0.1, 0.9] }
"""


def pump(old: str, new: str) -> str:
    assert old in PUMP
    return PUMP.replace(old, new, 1)


def marked(known: str, old: str, new: str) -> str:
    return pump(f'id = "{known}"', f'id = "{known}" # here').replace(old, new)


def in_fault(old: str, new: str) -> str:
    return marked("pump.dry", old, new)


def in_check(old: str, new: str) -> str:
    return marked("pump.gauge", old, new)


def in_symptom(old: str, new: str) -> str:
    return marked("no_water", old, new)


LOST = '[[fault]]\nid = "pump.lost" # here\nname = "x"\nprior = 0.1\nrepair = { say = "find it", minutes = 5 }\n'
SYMPTOM = '[[symptom]]\nid = "a"\nsays = "a"\nleak = 0.1\nheard = {}\ncauses = { "pump.dry" = 0.1 }\n[[symptom]] # here'
KIND = '[[kind]]\nid = "{}"\nwords = ["pawl"]\ncheck = "{}"\nminutes = {}\nbad = "renew it"\ngood = "go on"\n'
ACCESS = '[[access]]\nid = "{}"\nsays = "the hood"\nminutes = 1\nneeds = ["{}"]\n'
P, S, D = "parts/kiln.toml", "sayings/kiln.toml", "diagnosis/kiln.toml"
BROKEN = [
    # a file as a whole
    Broken(P, "part = [\nblower\n]\n", "it is not TOML", "in quotes"),
    Broken(P, "\udcff", "not UTF-8", "save it as UTF-8"),
    Broken("part/kiln.toml", "", "nothing reads a file of this name", "did you mean 'parts/'"),
    Broken("threads.toml", "", "only ours is read", "take it out"),
    # a part, a state, a word
    Broken(P, '[[part]] # here\nsaid = ["blower"]\n', "part has no 'name'", 'give it name = "some words"'),
    Broken(P, '[[part]]\nname = "kiln blower"\nsiad = ["fan"] # here\n', "unknown key 'siad'", "did you mean 'said'?"),
    Broken(P, '[[part]]\nname = "kiln blower"\nsaid = "fan" # here\n', "said is not a list of words", 'said = ["one"'),
    Broken(P, '[[part]]\nname = "kiln blower"\nsaid = ["-"] # here\n', "said is not a list of words", 'said = ["one"'),
    Broken(P, '[[part]]\nname = "kiln blower"\nloose = "yes" # here\n', "loose is not true or false", "loose = true"),
    Broken(P, '[[part]]\nname = "cone"\nkind = "pyrometer" # here\n', "the kind 'pyrometer' is not known", "fluid"),
    Broken(P, 'part = "blower" # here\n', "part is no list of tables", "write [[part]]"),
    Broken(P, 'part = [\n  { name = "kiln blower" },\n  { name = "damper", per = 3 }, # here\n]\n',
           "per is not a text", 'per = "some words"'),
    Broken("conditions/kiln.toml", 'verdict = "awful" # here\n',
           "the verdict 'awful' is not known", "bad, good, noted"),
    Broken("misheard.toml", '[[misheard]]\nheard = [""] # here\nmeans = "bung"\n', "heard is not a list", "heard = ["),
    Broken("owed.toml", 'dutty = ["has got to"] # here\n', "unknown key 'dutty'", "did you mean 'duty'?"),
    Broken("quantities/draught.toml", 'quantity = "draught"\n[[bare]]\nunit = "mmH2O"\nlow = "1" # here\nhigh = 9\n',
           "low is not a number", "low = 1.0"),
    Broken("taken.toml", '[[slot]]\nname = "damper"\nholdz = ["gap"] # here\n', "unknown key 'holdz'", "'holds'?"),
    Broken("taken.toml", '[limits] # here\n"maximum" = "at most"\n', "limits is not a table of lists", "limits = {"),
    Broken("units.toml", '[[unit]]\nshort = "cone"\ndimension = "heat"\nfactor = 1\npint = "kelvin"\n'
           'quantities = []\nsaid = ["psi"] # here\n', "'psi' is said both for 'psi' and for 'cone'", "take it out"),
    Broken("units.toml", '[[scaled]]\nname = "bung"\nshort = "bng" # here\nscale = 2\nquantities = []\n'
           'said = ["bungs"]\n', "'bng' is no unit, and 'bung' is said to be a multiple", "the short of a unit"),
    # a pattern
    Broken(S, rule("<thing> * <bad>"), "cannot understand '* <bad>'", '"several words"'),
    Broken(S, rule("<thing> ..40 <bad>"), "at most 8 tokens", "write ..8 or less"),
    Broken(S, rule("<thing> | <bad>"), "| stands only inside", "put the choices in ( )"),
    Broken(S, rule("<thing> )"), "')' closes nothing", "take it out"),
    Broken(S, rule("(<thing>|) <bad>"), "empty choice", "use [ ]"),
    Broken(S, rule("(<thing>"), "')' is missing", "close what was opened"),
    Broken(S, rule("[<thing>] !<bad>"), "nothing in it must be there", "outside of [ ]"),
    Broken(S, '[[rule]]\nid = "own.slack" # here\nsays = "<thing> <bad>"\ngives = { part = "x" }\n',
           "does not tell what kind of fact", 'kind = "finding"'),
    Broken(S, '[[rule]]\nid = "own.owe" # here\nsays = "owe <thing>"\n'
           'gives = { kind = "follow_up", reson = "later" }\n', "the unknown key 'reson'", "did you mean 'reason'?"),
    Broken(S, 'off = ["own.slak"] # here\n' + rule("slack").replace(" # here", ""), "no rule is called 'own.slak'",
           "did you mean 'own.slack'?"),
    Broken(S, rule("slack").replace(" # here", "") + '[[rule]]\nid = "own.slack"\nsays = "loose"\n'
           'gives = { kind = "finding" }\n', "rule own.slack stands there twice", "give it another id"),
    # comments, what is published, replies
    Broken("comments.toml", '[[cue]]\nkind = "praise" # here\nat = "start"\nweight = 1\nsays = ["lovely"]\n',
           "the kind 'praise' is not known", "question, suggestion, chatter"),
    Broken("comments.toml", '[[topic]]\nabout = "cone"\nsays = ["cone"]\npattern = "(" # here\n',
           "pattern is not a pattern", "pattern = 'colou?r'"),
    Broken("comments.toml", 'opposites = ["raw", "fired"] # here\n',
           "opposites is not a list of pairs", '[["hot", "cold"]'),
    Broken("comments.toml", '[[want]]\nholds = ["cone nine"] # here\n', "neither says nor near", "give it says"),
    Broken("publishing.toml", 'nevr = ["Old Nell"] # here\n', "unknown key 'nevr'", "did you mean 'never'?"),
    Broken("publishing.toml", 'never = [1, "Nell"] # here\n', "never is not a list of texts", 'never = ["one"'),
    Broken("publishing.toml", "never = [\n", "it is not TOML", "mend that line"),
    Broken("publishing.toml", "\udcff", "not UTF-8", "save it"),
    Broken("replies.toml", 'question = "see there" # here\n', "question is no table of replies", "write [question]"),
    Broken("replies.toml", '[question]\nopn = "I will look" # here\n', "nothing uses [question] opn", "open"),
    Broken("replies.toml", '[question]\nopen = "see $film" # here\n', "a $ that means nothing", "$where"),
    # fault finding
    Broken(D, "system = pump", "it is not TOML", "mend that line"),
    Broken(D, "\udcff", "not UTF-8", "save it"),
    Broken(D, 'fault = "dry"\n', "fault is no list of tables", "write [[fault]]"),
    Broken(D, pump("[[fault]]", "[[fault]] # here").replace('name = "no water to prime it"', ""),
           "has no 'name'", "give it"),
    Broken(D, pump("prior = 0.2", "prior = 0.2\npriro = 0.1 # here"), "unknown key 'priro'", "did you mean 'prior'?"),
    Broken(D, pump("minutes = 5 }", "minuts = 5, minutes = 5 } # here"),
           "pump.dry: repair has the unknown key 'minuts'", "did you mean 'minutes'?"),
    Broken(D, pump("[[symptom]]", SYMPTOM).replace('"no_water"', '"a"'),
           "symptom a stands there twice", "or rename it (line 9)"),
    Broken(D, in_fault("prior = 0.2", 'prior = "often"'),
           "fault pump.dry has a value of the wrong kind", "a number stands bare"),
    Broken(D, in_fault("look = {", "look = { cautions = [],").replace(
           'say = "look into the priming cup", ', ""), "fault pump.dry has a table without 'say'", "give it 'say'"),
    Broken(D, in_check("minutes = 2", 'minutes = 2\nbands = [["<", 3]]'),
           "check pump.gauge has a value of the wrong kind", "in [ ]"),
    Broken(D, in_symptom('"pump.dry" = 0.9', '"pump.wet" = 0.9'),
           "names the fault or check pump.wet, which is nowhere", "mend the name"),
    Broken(D, in_symptom("leak = 0.02", "leak = 1.5"),
           "a chance outside 0 to 1 (leak = 1.5)", "such as 0.3"),
    Broken(D, in_fault("prior = 0.2", "prior = 0.7"),
           "the prior of pump.dry is 0.7", "at most 0.5"),
    Broken(D, PUMP + LOST,
           "no symptom and no check reaches pump.lost", "link it to one"),
    Broken(D, PUMP + LOST,
           "nothing can show pump.lost", "give it a look"),
    Broken(D, in_check("minutes = 2", 'minutes = 2\ncombine = "best"'),
           "check pump.gauge combines by best", "write worst or masks"),
    Broken(D, in_check("[0.9, 0.1]", "[0.9, 0.2]"),
           "base does not add up to 1 over its outcomes (good, none)", "now 2, together 1.1"),
    Broken(D, in_check("[0.1, 0.9]", "[0.95, 0.05]"),
           "a good outcome likelier than it is without any fault", "to those of base"),
    Broken(D, in_check("minutes = 2", 'minutes = 2\nmeans = { lots = "x" }'),
           "the outcome lots, which is nowhere", "add that outcome"),
    Broken(D, in_check('{ "pump.dry" = [0.1', '{ "pump.wet" = [0.1'),
           "pump.gauge names the fault pump.wet", "mend the name"),
    Broken(D, in_fault("5 }", '5, access = ["lid"] }'),
           "the access lid, which is nowhere", "add that access"),
    Broken(D, in_fault("5 }", '5, cautions = ["dragons"] }'),
           "the caution dragons, which is nowhere", "add that caution"),
    Broken(D, in_fault("prime the pump", "turn the flywheel")
           + '[[caution]]\ntag = "rotating"\nsays = "It turns."\nsource = "common practice"\n',
           "no caution rotating though it says flywheel", 'write cautions = ["rotating"]'),
    Broken(D, in_fault("minutes = 5", "minutes = 0"),
           "pump.dry takes no time", "minutes above 0"),
    Broken(D, PUMP + ACCESS.format("a", "b").replace("\n", " # here\n", 2).replace(" # here", "", 1)
           + ACCESS.format("b", "a"), "access a needs itself", "take a name out"),
    Broken(D, PUMP + '[[access]]\nid = "a" # here\nsays = "x"\nminutes = 1\nneeds = ["b"]\n',
           "a names the access b", "mend"),
    Broken(D, PUMP + '[[danger]]\nid = "hot" # here\nany = ["hot kiln"]\nsays = "x"\ncautions = ["dragons"]\n',
           "hot names the caution dragons", "mend the name"),
    Broken(D, in_fault("prior = 0.2",
           'prior = 0.2\napplies_when = { has = ["wings"] }'), "the trait of a machine wings", "mend the name"),
    Broken(D, PUMP + '[[discovery]]\nid = "air" # here\nheard = { parts = ["tap"] }\nvoids = ["nothing"]\n',
           "the sign nothing", "mend the name"),
    Broken(D, PUMP + KIND.format("rod", "feel it", 2) + KIND.format("bar", "feel it", 2).replace('"bar"',
           '"bar" # here'),
           'both claim the word "pawl"', "leave it to one of them"),
]  # fmt: skip
