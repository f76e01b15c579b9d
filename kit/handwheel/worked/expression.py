"""A formula stated once as a small expression: evaluated, and set as text, HTML or typst.

The form is a closed part of Python's own expression grammar: numbers, names, + - * / **, and the functions
in FUNCTIONS. Angles are in degrees.
"""

from __future__ import annotations

import ast
import html
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache

from handwheel.numbers.faults import HandwheelError

FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "sin": lambda x: math.sin(math.radians(x)),
    "cos": lambda x: math.cos(math.radians(x)),
    "tan": lambda x: math.tan(math.radians(x)),
    "asin": lambda x: math.degrees(math.asin(x)),
    "atan": lambda x: math.degrees(math.atan(x)),
    "sqrt": math.sqrt,
    "floor": lambda x: float(math.floor(x + 1e-9)),
    "mod": lambda x, y: x - y * math.floor(x / y + 1e-9),
    # A change of units leaves a half a float's breadth off; it is still a half.
    "round": lambda x: float(round(round(x, 6))),
}
"""The functions a formula may use; trigonometry in degrees."""

_OPERATORS: Mapping[type[ast.operator], tuple[int, Callable[[float, float], float]]] = {
    ast.Add: (1, lambda a, b: a + b),
    ast.Sub: (1, lambda a, b: a - b),
    ast.Mult: (2, lambda a, b: a * b),
    ast.Div: (2, lambda a, b: a / b),
    ast.Pow: (4, math.pow),
}
"""How tightly each operator binds, and what it does."""

_WHOLE = 9
"""The rank of what needs no brackets anywhere."""


@cache
def _parsed(formula: str) -> ast.expr:
    try:
        return ast.parse(formula, mode="eval").body
    except SyntaxError as error:
        raise HandwheelError(f"{formula!r} is no formula") from error


def evaluate(formula: str, values: Mapping[str, float]) -> float:
    """Return what a formula gives for values by name.

    Raises:
        HandwheelError: the formula uses something outside the closed form, a name without a value, or numbers
            for which it has none, such as the root of a negative one.

    >>> evaluate("12*v/(pi*D)", {"v": 90.0, "D": 1.5})
    229.18...
    """
    try:
        return _value(_parsed(formula), {"pi": math.pi, **values})
    except HandwheelError:
        raise
    except (ValueError, ArithmeticError) as fault:
        raise HandwheelError(f"{formula!r} has no value for these numbers") from fault


def _value(node: ast.expr, values: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=name) if name in values:
            return values[name]
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -_value(inner, values)
        case ast.BinOp(left=left, op=operator, right=right) if type(operator) in _OPERATORS:
            return _OPERATORS[type(operator)][1](_value(left, values), _value(right, values))
        case ast.Call(func=ast.Name(id=name), args=arguments) if name in FUNCTIONS:
            return FUNCTIONS[name](*(_value(each, values) for each in arguments))
    raise HandwheelError(f"{ast.unparse(node)!r} has no place in a formula")


@dataclass(frozen=True)
class _Style:
    """How one kind of page writes the parts of a formula."""

    symbol: Callable[[str], str]
    number: Callable[[str], str]
    function: Callable[[str], str]
    times: str
    over: Callable[[str, str], str]
    power: Callable[[str, str], str]
    bar: bool = False


def typst_string(words: str) -> str:
    r"""Return words as a typst string, so that nothing in them is read as markup.

    >>> print(typst_string('1/2" #bar'))
    "1/2\" #bar"
    """
    escaped = words.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


_TEXT = _Style(
    symbol=lambda name: "π" if name == "pi" else name,
    number=str,
    function=str,
    times=" × ",
    over=lambda above, below: f"{above} / {below}",
    power=lambda base, exponent: f"{base}^{exponent}",
)
_HTML = _Style(
    symbol=_TEXT.symbol,
    number=html.escape,
    function=str,
    times=" × ",
    over=_TEXT.over,
    power=lambda base, exponent: f"{base}<sup>{exponent}</sup>",
)
_TYPST = _Style(
    symbol=lambda name: name if len(name) == 1 or name == "pi" else typst_string(name),
    number=typst_string,
    function=lambda name: name if name in ("sin", "cos", "tan", "sqrt", "floor") else f"op({typst_string(name)})",
    times=" times ",
    over=lambda above, below: f"frac({above}, {below})",
    power=lambda base, exponent: f"{base}^({exponent})",
    bar=True,
)


def as_text(formula: str, words: Mapping[str, str] | None = None) -> str:
    """Return a formula in plain text, its names replaced by `words` where given.

    >>> as_text("12*v/(pi*D)"), as_text("12*v/(pi*D)", {"v": "90", "D": "1.5"})
    ('12 × v / (π × D)', '12 × 90 / (π × 1.5)')
    """
    return _written(_parsed(formula), words or {}, _TEXT)[0]


def as_html(formula: str, words: Mapping[str, str] | None = None) -> str:
    """Return a formula as HTML, every word put in escaped.

    >>> as_html("f**2/(8*r)")
    'f<sup>2</sup> / (8 × r)'
    """
    return _written(_parsed(formula), words or {}, _HTML)[0]


def as_typst(formula: str, words: Mapping[str, str] | None = None) -> str:
    """Return a formula as typst's mathematics, every word put in as a string.

    >>> as_typst("f**2/(8*r)")
    'frac(f^(2), 8 times r)'
    """
    return _written(_parsed(formula), words or {}, _TYPST)[0]


def _written(node: ast.expr, words: Mapping[str, str], style: _Style) -> tuple[str, int]:
    """Return a node's text and how tightly it binds."""
    match node:
        case ast.Constant(value=int() | float() as number):
            return f"{number}", _WHOLE
        case ast.Name(id=name):
            word = style.number(words[name]) if name in words else style.symbol(name)
            return (f"({word})", _WHOLE) if words.get(name, "").startswith("-") else (word, _WHOLE)
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return "−" + _bound(inner, words, style, 3), 3
        case ast.BinOp(left=left, op=operator, right=right) if type(operator) in _OPERATORS:
            return _joined(left, operator, right, words, style)
        case ast.Call(func=ast.Name(id=name), args=arguments) if name in FUNCTIONS:
            inside = ", ".join(_written(each, words, style)[0] for each in arguments)
            return f"{style.function(name)}({inside})", _WHOLE
    raise HandwheelError(f"{ast.unparse(node)!r} has no place in a formula")


def _joined(
    left: ast.expr, operator: ast.operator, right: ast.expr, words: Mapping[str, str], style: _Style
) -> tuple[str, int]:
    rank, _ = _OPERATORS[type(operator)]
    # a - (b - c) and a / (b * c) keep their brackets: the right side binds a step tighter, a power's base too;
    # a fraction bar is bracket enough
    barred = isinstance(operator, ast.Div) and style.bar
    before = _bound(left, words, style, 0 if barred else rank + isinstance(operator, ast.Pow))
    after = _bound(right, words, style, 0 if barred else rank + 1)
    match operator:
        case ast.Pow():
            return style.power(before, after), rank
        case ast.Div():
            return style.over(before, after), rank
        case ast.Mult():
            return before + style.times + after, rank
        case ast.Add():
            return f"{before} + {after}", rank
    return f"{before} − {after}", rank


def _bound(node: ast.expr, words: Mapping[str, str], style: _Style, rank: int) -> str:
    text, own = _written(node, words, style)
    return f"({text})" if own < rank else text
