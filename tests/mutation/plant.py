"""Plants mutants in C++ source: every comparison and every number of it asks at run time which mutant is alive.

The source is formatted by clang-format, which puts blanks around a comparison and none inside the brackets of a template:
that is all that tells the two apart here. What is planted stands in mutants.hpp.
"""

import re
from dataclasses import dataclass, field

TOKEN = re.compile(
    r"""(?P<skip>\s+|//[^\n]*|/\*.*?\*/|^[ \t]*\#[^\n]*)
      | (?P<raw>R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)")
      | (?P<text>"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*')
      | (?P<number>\d(?:[eE][+-]?\d|'\d|[\w.])*)
      | (?P<word>[A-Za-z_]\w*)
      | (?P<sign><=>|<<=|>>=|->\*|\.\.\.|->|::|\+\+|--|&&|\|\||[-+*/%&|^<>=!]=|<<|(?<=\s)>>(?=\s)|.)""",
    re.VERBOSE | re.DOTALL | re.MULTILINE,
)
OPENING = {"(": ")", "[": "]", "{": "}"}
COMPARISONS = {
    "<": ("less", "<=", ">="),
    "<=": ("less_equal", "<", ">"),
    ">": ("greater", ">=", "<="),
    ">=": ("greater_equal", ">", "<"),
    "==": ("equal", "!="),
    "!=": ("not_equal", "=="),
}
# Functions of calc/band.hpp and rules/compare.hpp that compare two numbers, and what their mutants read like.
NAMED = {
    "above": ("at or above", "at or below"),
    "below": ("at or below", "at or above"),
    "at_or_above": ("above", "below"),
    "at_or_below": ("below", "above"),
    "at_least": ("more than", "less than"),
    "same": ("not the same",),
}
# Where an operand of a comparison ends, besides brackets.
ENDS = {",", ";", "&&", "||", "?", ":", "=", "+=", "-=", "*=", "/=", "return", "else", "case", "throw"} | set(COMPARISONS)


@dataclass
class Token:
    kind: str
    text: str
    start: int
    end: int
    mate: int = -1  # the other bracket of the pair
    within: int = -1  # the bracket that it stands in


@dataclass
class Mutant:
    number: int
    file: str
    line: int
    kind: str  # boundary, turned, number
    changed: str  # the line of the source, without comment, with the change in it: "if (years [< became <=] 18) return;"


@dataclass
class Planted:
    text: str
    mutants: list[Mutant] = field(default_factory=list)
    skipped: list[str] = field(default_factory=list)  # numbers that must be constants, and where


def tokens_of(text: str) -> list[Token]:
    tokens = []
    at = 0
    while at < len(text):
        match = TOKEN.match(text, at)
        kind = match.lastgroup if match.lastgroup != "mark" else "raw"
        if match.group("raw") is not None:
            kind = "raw"
        if kind != "skip":
            tokens.append(Token(kind, match.group(), match.start(), match.end()))
        at = match.end()
    return pair_brackets(text, tokens)


def blank(text: str, at: int) -> bool:
    return at < 0 or at >= len(text) or text[at].isspace()


def is_infix(text: str, token: Token) -> bool:
    return blank(text, token.start - 1) and blank(text, token.end)


def pair_brackets(text: str, tokens: list[Token]) -> list[Token]:
    stack: list[int] = []
    for at, token in enumerate(tokens):
        if token.kind != "sign":
            token.within = stack[-1] if stack else -1
            continue
        opens = token.text in OPENING
        closes = token.text in OPENING.values()
        if token.text in ("<", ">") and not is_infix(text, token) and tokens[at - 1].text != "operator":
            token.kind = "angle"
            opens, closes = token.text == "<", token.text == ">"
        if closes:
            mate = stack.pop()
            token.mate, tokens[mate].mate = mate, at
        token.within = stack[-1] if stack else -1
        if opens:
            stack.append(at)
    if stack:
        raise ValueError(f"bracket without its other half: {text[tokens[stack[-1]].start:][:60]!r}")
    return tokens


def operand_before(tokens: list[Token], at: int, text: str) -> int:
    """The first token of the operand that ends before `at`."""
    first = at
    while first > 0:
        before = tokens[first - 1]
        if before.mate >= first - 1 or (before.text in ENDS and before.kind != "angle"):
            break
        first = before.mate if before.mate >= 0 else first - 1
    return first


def operand_after(tokens: list[Token], at: int, text: str) -> int:
    """The last token of the operand that begins after `at`."""
    last = at
    while True:
        after = tokens[last + 1]
        if (0 <= after.mate < last + 1) or (after.text in ENDS and after.kind != "angle"):
            break
        last = after.mate if after.mate >= 0 else last + 1
    return last


def slipped(number: str) -> str:
    """A plausible slip: one more of a small whole number, a twentieth more of any other, 1 instead of 0."""
    if number.startswith("0x"):
        return hex(int(number, 16) + 1)
    match = re.fullmatch(r"([\d'.]+(?:[eE][+-]?\d+)?)([uUlLfF]*)", number)
    value, suffix = match.group(1).replace("'", ""), match.group(2)
    if value.isdigit():
        whole = int(value)
        return f"{whole + 1 if whole < 20 else whole + max(1, round(whole / 20))}{suffix}"
    return repr(float(f"{float(value) * 1.05:.12g}") or 1.0) + suffix


class Planter:
    def __init__(self, file: str, text: str, first: int, keep_numbers: bool = False):
        self.file, self.text, self.next = file, text, first
        self.tokens = tokens_of(text)
        self.keep_numbers = keep_numbers
        self.edits: list[tuple[int, int, int, str]] = []  # start, order, end, text
        self.planted = Planted("")

    def mutant(self, token: Token, kind: str, change: str) -> int:
        line = self.text.count("\n", 0, token.start) + 1
        before = self.text.rfind("\n", 0, token.start) + 1
        after = (self.text + "\n").find("\n", token.end)
        slip = f"[{token.text} became {change}]"
        changed = self.text[before : token.start] + slip + self.text[token.end : after]
        changed = re.sub(r"\s+", " ", re.sub(r"\s*//.*", "", changed)).strip()
        self.planted.mutants.append(Mutant(self.next, self.file, line, kind, changed))
        self.next += 1
        return self.next - 1

    def put(self, start: int, text: str, end: int = -1, order: int = 1) -> None:
        self.edits.append((start, order, end if end >= 0 else start, text))

    def plant(self) -> Planted:
        for at, token in enumerate(self.tokens):
            if token.kind == "sign" and token.text in COMPARISONS and is_infix(self.text, token):
                self.compare(at)
            elif token.kind == "word" and token.text in NAMED and self.is_call(at):
                self.compare_by_name(at)
            elif token.kind == "number":
                self.number(at)
            elif token.text == "constexpr" and self.tokens[at - 1].text != "if":
                self.constant(at)
        out, done = "", 0
        for start, _, end, text in sorted(self.edits, key=lambda edit: edit[:2]):
            out += self.text[done:start] + text
            done = end
        self.planted.text = out + self.text[done:]
        return self.planted

    def compare(self, at: int) -> None:
        token = self.tokens[at]
        name, *changes = COMPARISONS[token.text]
        kinds = ["boundary", "turned"][-len(changes) :]
        numbers = [self.mutant(token, kind, change) for kind, change in zip(kinds, changes)]
        mutants = str(numbers[0]) if len(numbers) == 1 else "{%d, %d}" % tuple(numbers)
        first, last = operand_before(self.tokens, at, self.text), operand_after(self.tokens, at, self.text)
        self.put(self.tokens[first].start, f"::ventfolio::mutation::{name}({mutants}, ", order=0)
        self.put(token.start, ",", token.end)
        self.put(self.tokens[last].end, ")", order=-1)

    def is_call(self, at: int) -> bool:
        before, after = self.tokens[at - 1], self.tokens[at + 1]
        if after.text != "(" or before.text in (".", "->"):
            return False
        return before.kind != "word" or before.text in ("return", "else")  # a word before it is the type of a declaration

    def compare_by_name(self, at: int) -> None:
        token, first = self.tokens[at], at
        while self.tokens[first - 1].text == "::":
            first -= 2
        callee = self.text[self.tokens[first].start : token.end]
        changes = NAMED[token.text]
        kinds = ["boundary", "turned"][-len(changes) :]
        numbers = [self.mutant(token, kind, change) for kind, change in zip(kinds, changes)]
        both = numbers if len(numbers) == 2 else [0, numbers[0]]
        self.put(self.tokens[first].start, "VENTFOLIO_NAMED(%d, %d, %s)" % (*both, callee), token.end)

    def number(self, at: int) -> None:
        token, before = self.tokens[at], self.tokens[at - 1].text
        inside = self.tokens[token.within] if token.within >= 0 else None
        constant = (
            self.keep_numbers
            or before == "case"
            or (inside is not None and inside.kind == "angle")
            or (inside is not None and self.tokens[token.within - 1].text == "static_assert")
            or (before == "=" and self.tokens[at - 2].text in (")", "const", "override"))
        )
        if constant:
            self.planted.skipped.append(f"{self.file}: {token.text}")
            return
        change = slipped(token.text)
        mutant = self.mutant(token, "number", change)
        self.put(token.start, f"::ventfolio::mutation::number({mutant}, {token.text}, {change})", token.end)

    def constant(self, at: int) -> None:
        """What asks at run time is no constant expression: a function loses the word, a variable is made when used."""
        inline = self.tokens[at - 1].text == "inline"
        token = self.tokens[at]
        stop = at + 1
        while self.tokens[stop].text not in ("(", "=", "{", ";", "operator", "["):
            stop = self.tokens[stop].mate if self.tokens[stop].mate > stop else stop + 1
        if self.tokens[stop].text == "operator":
            return
        if self.tokens[stop].text == "(":
            self.put(token.start, "" if inline else "inline", token.end)
            return
        end = stop
        while self.tokens[end].text != ";":
            end = self.tokens[end].mate if self.tokens[end].mate > end else end + 1
        if not any(part.kind == "number" or re.match(r"k[A-Z]", part.text) for part in self.tokens[stop:end]):
            return
        if not self.in_namespace(at):
            self.put(token.start, "", token.end)
            return
        name = self.tokens[stop - 1].text
        start = self.tokens[at - 1].start if inline else token.start
        # Two namespaces may have a constant of one name.
        made = f"\n#undef {name}\ninline const auto& {name}_kept() {{ return ::ventfolio::mutation::kept([] {{"
        self.put(start, made, token.end)
        self.put(self.tokens[end].end, f" return {name}; }}); }}\n#define {name} {name}_kept()\n")

    def in_namespace(self, at: int) -> bool:
        inside = self.tokens[at].within
        while inside >= 0:
            before = inside - 1
            while self.tokens[before].text == "::" or (self.tokens[before].kind == "word" and self.tokens[before].text != "namespace"):
                before -= 1
            if self.tokens[before].text != "namespace":
                return False
            inside = self.tokens[inside].within
        return True
