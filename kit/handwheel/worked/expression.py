"""A formula stated once as a small expression: evaluated, and set as text, HTML or typst.

The form is a closed part of Python's own expression grammar: numbers, names, + - * / **, and the functions
in FUNCTIONS. Angles are in degrees.
"""

from __future__ import annotations

import ast
import html
import math
from collections.abc import Callable, Mapping
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
    "round": lambda x: float(math.floor(x + 0.5)),
}
"""The functions a formula may use; trigonometry in degrees."""

_OPERATORS: Mapping[type[ast.operator], tuple[int, str, Callable[[float, float], float]]] = {
    ast.Add: (1, " + ", lambda a, b: a + b),
    ast.Sub: (1, " − ", lambda a, b: a - b),
    ast.Mult: (2, " × ", lambda a, b: a * b),
    ast.Div: (2, " / ", lambda a, b: a / b),
    ast.Pow: (4, "^", lambda a, b: a**b),
}


@cache
def _parsed(formula: str) -> ast.expr:
    try:
        return ast.parse(formula, mode="eval").body
    except SyntaxError as error:
        raise HandwheelError(f"{formula!r} is no formula") from error


def evaluate(formula: str, values: Mapping[str, float]) -> float:
    """Return what a formula gives for values by name.

    Raises:
        HandwheelError: the formula uses something outside the closed form, or a name without a value.

    >>> evaluate("12*v/(pi*D)", {"v": 90.0, "D": 1.5})
    229.18...
    """
    return _value(_parsed(formula), {"pi": math.pi, **values})


def _value(node: ast.expr, values: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=name) if name in values:
            return values[name]
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -_value(inner, values)
        case ast.BinOp(left=left, op=operator, right=right) if type(operator) in _OPERATORS:
            return _OPERATORS[type(operator)][2](_value(left, values), _value(right, values))
        case ast.Call(func=ast.Name(id=name), args=arguments) if name in FUNCTIONS:
            return FUNCTIONS[name](*(_value(each, values) for each in arguments))
    raise HandwheelError(f"{ast.unparse(node)!r} has no place in a formula")


def as_text(formula: str, words: Mapping[str, str] | None = None) -> str:
    """Return a formula in plain text, its names replaced by `words` where given.

    >>> as_text("12*v/(pi*D)"), as_text("12*v/(pi*D)", {"v": "90", "D": "1.5"})
    ('12 × v / (π × D)', '12 × 90 / (π × 1.5)')
    """
    return _written(_parsed(formula), {"pi": "π", **(words or {})}, lambda x, y: f"{x}^{y}")[0]


def as_html(formula: str, words: Mapping[str, str] | None = None) -> str:
    """Return a formula as HTML, every name escaped.

    >>> as_html("f**2/(8*r)")
    'f<sup>2</sup> / (8 × r)'
    """
    escaped = {name: html.escape(word) for name, word in (words or {}).items()}
    return _written(_parsed(formula), {"pi": "π", **escaped}, lambda x, y: f"{x}<sup>{y}</sup>")[0]


def _written(node: ast.expr, words: Mapping[str, str], power: Callable[[str, str], str]) -> tuple[str, int]:
    """Return a node's text and how tightly it binds."""
    match node:
        case ast.Constant(value=int() | float() as number):
            return f"{number}", 9
        case ast.Name(id=name):
            word = words.get(name, name)
            return (f"({word})", 9) if word.startswith("-") else (word, 9)
        case ast.UnaryOp(operand=inner):
            return "−" + _bound(inner, words, power, 3), 3
        case ast.BinOp(left=left, op=operator, right=right):
            rank, sign, _ = _OPERATORS[type(operator)]
            # a - (b - c) and a / (b * c) keep their brackets: the right side binds a step tighter
            before, after = _bound(left, words, power, rank), _bound(right, words, power, rank + 1)
            return (power(before, after) if isinstance(operator, ast.Pow) else before + sign + after), rank
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return f"{name}({', '.join(_written(each, words, power)[0] for each in arguments)})", 9
    raise HandwheelError(f"{ast.unparse(node)!r} has no place in a formula")


def _bound(node: ast.expr, words: Mapping[str, str], power: Callable[[str, str], str], rank: int) -> str:
    text, own = _written(node, words, power)
    return f"({text})" if own < rank else text
