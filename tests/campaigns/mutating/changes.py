"""The small changes of meaning that the mutation campaign can make to one node of a syntax tree. Called by `places`.

Kept general-purpose tools change operators and numbers; they know nothing of a field's mistakes (the other limit, the coat above, only
the first entry, a default or a filter forgotten), so the set is our own and needs no library.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterator
from copy import deepcopy

Change = tuple[str, ast.AST]  # the kind of change, the node that takes the place

_BOUNDS: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt,
}  # fmt: skip
_TURNED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.Gt, ast.LtE: ast.GtE, ast.Gt: ast.Lt, ast.GtE: ast.LtE, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
_ARITHMETIC: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.BitOr: ast.BitAnd, ast.BitAnd: ast.BitOr,
}  # fmt: skip
_CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor",
          "startswith": "endswith", "endswith": "startswith", "issubset": "issuperset", "isdisjoint": "issubset"}  # fmt: skip
_SIBLINGS = [
    ("min", "max"), ("minimum", "maximum"), ("low", "high"), ("lower", "upper"), ("lowest", "highest"), ("least", "most"),
    ("coldest", "warmest"), ("below", "above"), ("first", "last"), ("old", "new"), ("older", "newer"), ("before", "after"),
    ("wet", "dry"), ("own", "product"), ("nominal", "min"), ("added", "removed"), ("length", "width"), ("begin", "end"),
    ("earlier", "later"), ("theirs", "ours"), ("sprayed", "mixed"), ("inner", "outer"), ("one", "both"),
]  # fmt: skip
_OTHER = {left: right for pair in _SIBLINGS for left, right in (pair, pair[::-1])}
_PLAIN_KEY = re.compile(r"[A-Za-z%][A-Za-z0-9_.%/-]{1,40}")
_PLATFORM = {"strict", "encoding", "newline", "key", "kw_only", "slots", "frozen", "repr", "maxsize", "errors"}


class Package:
    """What a change must know of all modules: attributes read anywhere, and what may be left out of a call of a function of that name."""

    def __init__(self, modules: list[ast.Module]) -> None:
        self.attributes: set[str] = set()
        self.optional: dict[str, set[str]] = {}
        for node in (node for module in modules for node in ast.walk(module)):
            if isinstance(node, ast.Attribute):
                self.attributes.add(node.attr)
            elif isinstance(node, ast.FunctionDef):
                args = node.args
                plain = [*args.posonlyargs, *args.args]
                late = plain[len(plain) - len(args.defaults) :]
                late += [a for a, default in zip(args.kwonlyargs, args.kw_defaults, strict=True) if default is not None]
                self.optional.setdefault(node.name, set()).update(a.arg for a in late)
            elif isinstance(node, ast.ClassDef):
                named = {
                    f.target.id
                    for f in node.body
                    if isinstance(f, ast.AnnAssign) and f.value and isinstance(f.target, ast.Name)
                }
                self.optional.setdefault(node.name, set()).update(named)

    def may_drop(self, function: str, argument: str) -> bool:
        return function not in self.optional or argument in self.optional[function]


class Surroundings:
    """What a change must know of its module: the names and keys that exist, and of its function the types of arguments and answer."""

    def __init__(self, module: ast.Module, package: Package) -> None:
        self.package = package
        self.types: dict[str, str] = {}
        self.names = {n.id for n in ast.walk(module) if isinstance(n, ast.Name)} | {
            n.arg for n in ast.walk(module) if isinstance(n, ast.arg)
        }
        self.keys = sorted({n.value for n in ast.walk(module) if is_key(n)} - exported(module))
        self.returns = ""


def exported(module: ast.Module) -> set[str]:
    """What `__all__` names."""
    lists = [n.value for n in module.body if isinstance(n, ast.Assign) and ast.unparse(n.targets[0]) == "__all__"]
    return {n.value for listed in lists for n in ast.walk(listed) if isinstance(n, ast.Constant)}


def is_key(node: ast.AST) -> bool:
    """A text that is a key or an id, not a sentence."""
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and bool(_PLAIN_KEY.fullmatch(node.value))


def changes(node: ast.AST, around: Surroundings) -> Iterator[Change]:
    """Every change of this node alone; of those below it when their turn comes."""
    made = _BY_TYPE.get(type(node))
    if made is not None:
        yield from made(node, around)


def _compare(node: ast.Compare, around: Surroundings) -> Iterator[Change]:
    for at, op in enumerate(node.ops):
        for kind, table in (("bound", _BOUNDS), ("comparison turned", _TURNED)):
            if type(op) in table:
                new = deepcopy(node)
                new.ops[at] = table[type(op)]()
                yield kind, new


def _bool(node: ast.BoolOp, around: Surroundings) -> Iterator[Change]:
    new = deepcopy(node)
    new.op = ast.Or() if isinstance(node.op, ast.And) else ast.And()
    yield "and/or", new
    for at in range(len(node.values)):
        rest = [deepcopy(value) for i, value in enumerate(node.values) if i != at]
        yield "operand dropped", rest[0] if len(rest) == 1 else ast.BoolOp(node.op, rest)


def _unary(node: ast.UnaryOp, around: Surroundings) -> Iterator[Change]:
    if isinstance(node.op, ast.Not):
        yield "not dropped", node.operand


def _binary(node: ast.BinOp, around: Surroundings) -> Iterator[Change]:
    texts = any(
        isinstance(n, ast.JoinedStr) or (isinstance(n, ast.Constant) and isinstance(n.value, str))
        for n in (node.left, node.right)
    )
    if type(node.op) in _ARITHMETIC and not texts:
        yield "arithmetic", ast.BinOp(node.left, _ARITHMETIC[type(node.op)](), node.right)


def _if_else(node: ast.IfExp, around: Surroundings) -> Iterator[Change]:
    yield "branches swapped", ast.IfExp(node.test, node.orelse, node.body)


def _subscript(node: ast.Subscript, around: Surroundings) -> Iterator[Change]:
    if not isinstance(node.ctx, ast.Load):
        return
    index = node.slice
    text = ast.unparse(index)
    other = {"0": "-1", "-1": "0", "1": "0", ":1": "-1:", "-1:": ":1", "1:": ":", ":-1": ":"}.get(text)
    if other is not None:
        yield "first/last", ast.parse(f"({ast.unparse(node.value)})[{other}]", mode="eval").body


def _call(node: ast.Call, around: Surroundings) -> Iterator[Change]:
    name = (
        node.func.id
        if isinstance(node.func, ast.Name)
        else node.func.attr
        if isinstance(node.func, ast.Attribute)
        else ""
    )
    if name in _CALLS:
        new = deepcopy(node)
        if isinstance(new.func, ast.Name):
            new.func.id = _CALLS[name]
        elif isinstance(new.func, ast.Attribute):
            new.func.attr = _CALLS[name]
        yield "min/max, any/all", new
    if name == "sorted" and not any(k.arg == "reverse" for k in node.keywords):
        yield "order", ast.Call(node.func, node.args, [*node.keywords, ast.keyword("reverse", ast.Constant(True))])
    if name == "get" and len(node.args) == 2:
        yield "default dropped", ast.Call(node.func, node.args[:1], node.keywords)
    for at, keyword in enumerate(node.keywords):
        if keyword.arg is not None and keyword.arg not in _PLATFORM and around.package.may_drop(name, keyword.arg):
            yield "keyword dropped", ast.Call(node.func, node.args, [k for i, k in enumerate(node.keywords) if i != at])
    for at in range(len(node.args) - 1):
        pair = node.args[at : at + 2]
        types = [around.types.get(n.id) if isinstance(n, ast.Name) else None for n in pair]
        if types[0] is not None and types[0] == types[1]:  # a swap of two types is seen by the type checker
            args = [*node.args[:at], *reversed(pair), *node.args[at + 2 :]]
            yield "arguments swapped", ast.Call(node.func, args, node.keywords)


def _constant(node: ast.Constant, around: Surroundings) -> Iterator[Change]:
    if isinstance(node.value, bool):
        yield "true/false", ast.Constant(not node.value)
    elif isinstance(node.value, int):
        yield "off by one", ast.Constant(node.value + 1)
    elif is_key(node) and node.value in around.keys and len(around.keys) > 1:
        at = around.keys.index(node.value)
        yield "key swapped", ast.Constant(around.keys[at - 1])


def _sibling(word: str) -> Iterator[str]:
    parts = word.split("_")
    for at, part in enumerate(parts):
        if part in _OTHER:
            yield "_".join([*parts[:at], _OTHER[part], *parts[at + 1 :]])


def _attribute(node: ast.Attribute, around: Surroundings) -> Iterator[Change]:
    if isinstance(node.ctx, ast.Load):
        for other in _sibling(node.attr):
            if other in around.package.attributes:
                yield "sibling", ast.Attribute(node.value, other, ast.Load())


def _name(node: ast.Name, around: Surroundings) -> Iterator[Change]:
    if isinstance(node.ctx, ast.Load):
        for other in _sibling(node.id):
            if other in around.names:
                yield "sibling", ast.Name(other, ast.Load())


def _comprehension(node: ast.AST, around: Surroundings) -> Iterator[Change]:
    for at, part in enumerate(node.generators):
        for which in range(len(part.ifs)):
            new = deepcopy(node)
            del new.generators[at].ifs[which]
            yield "condition dropped", new
        new = deepcopy(node)
        new.generators[at].iter = _only(part.iter, "[:1]")
        yield "first only", new


def _only(node: ast.expr, which: str) -> ast.expr:
    return ast.parse(f"list({ast.unparse(node)}){which}", mode="eval").body


def _for(node: ast.For, around: Surroundings) -> Iterator[Change]:
    """The places of a loop are those of what it runs over."""
    yield "first only", _only(node.iter, "[:1]")
    yield "last only", _only(node.iter, "[-1:]")


def _return(node: ast.Return, around: Surroundings) -> Iterator[Change]:
    """What a function may answer by its type, but never should always."""
    if node.value is None or isinstance(node.value, ast.Constant):
        return
    returns = around.returns
    if returns == "bool":
        yield "answer turned", ast.UnaryOp(ast.Not(), node.value)
    elif returns.endswith("| None"):
        yield "no answer", ast.Constant(None)
    elif returns == "str":
        yield "no answer", ast.Constant("")
    elif re.match(r"(tuple\[.*\.\.\.\]|Sequence)", returns):
        yield "no answer", ast.Tuple([], ast.Load())


_BY_TYPE: dict[type[ast.AST], Callable[..., Iterator[Change]]] = {
    ast.Compare: _compare, ast.BoolOp: _bool, ast.UnaryOp: _unary, ast.BinOp: _binary, ast.IfExp: _if_else,
    ast.Subscript: _subscript, ast.Call: _call, ast.Constant: _constant, ast.Attribute: _attribute, ast.Name: _name,
    ast.ListComp: _comprehension, ast.SetComp: _comprehension, ast.DictComp: _comprehension, ast.GeneratorExp: _comprehension,
    ast.For: _for, ast.Return: _return,
}  # fmt: skip


def statement_changes(node: ast.stmt) -> Iterator[tuple[str, ast.AST, str]]:
    """(kind, node whose text is replaced, the text instead) of changes that are not one of an expression."""
    if isinstance(node, ast.Continue):
        yield "continue/break", node, "break"
    elif isinstance(node, ast.Break):
        yield "continue/break", node, "continue"
    elif isinstance(node, ast.If):
        leaves = isinstance(node.body[-1], ast.Return | ast.Continue | ast.Raise) and not node.orelse
        yield "guard dropped" if leaves else "branch never taken", node.test, "False"
        yield "branch always taken", node.test, "True"
    elif isinstance(node, ast.Expr) and isinstance(node.value, ast.Yield | ast.YieldFrom):
        yield "nothing told", node, "yield from ()"
    elif (isinstance(node, ast.Expr) and isinstance(node.value, ast.Call)) or (
        isinstance(node, ast.AugAssign) and isinstance(node.op, ast.Add | ast.BitOr)
    ):
        yield "step dropped", node, "pass"
