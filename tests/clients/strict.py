"""Holds a message against the typed models of the protocol: nothing missing, nothing unknown, nothing of another type.

The library's own reader passes over members that it does not know and turns values into what it wants.
"""
import collections.abc
import enum
import typing

import attrs
from lsprotocol import types


def faults(value, wanted, where="", /):
    """What is wrong with `value` as a `wanted`, each as a line that begins with the place."""
    wanted = resolved(wanted)
    if wanted in (typing.Any, object) or wanted == types.LSPAny:
        return []
    origin, arguments = typing.get_origin(wanted), typing.get_args(wanted)
    if origin is typing.Union:
        return faults_of_union(value, arguments, where)
    if origin is typing.Literal:
        return [] if value in arguments else [f"{where}: {value!r:.80} is none of {arguments}"]
    if origin in (list, collections.abc.Sequence):
        return all_faults(value, list, lambda: [(str(at), arguments[0], item) for at, item in enumerate(value)], where)
    if origin is tuple:
        if not isinstance(value, list) or len(value) != len(arguments):
            return [f"{where}: {value!r:.80} is no list of {len(arguments)}"]
        return [fault for at, (item, of) in enumerate(zip(value, arguments)) for fault in faults(item, of, f"{where}/{at}")]
    if origin in (dict, collections.abc.Mapping):
        return all_faults(value, dict, lambda: [(name, arguments[1], item) for name, item in value.items()], where)
    if isinstance(wanted, type) and attrs.has(wanted):
        return faults_of_object(value, wanted, where)
    if isinstance(wanted, type) and issubclass(wanted, enum.Enum):
        is_one = not isinstance(value, bool) and any(value == one.value for one in wanted)
        # Kinds that a client may extend are open to any text.
        return [] if is_one or isinstance(value, str) and issubclass(wanted, str) else [f"{where}: {value!r:.80} is no {wanted.__name__}"]
    if wanted is type(None):
        return [] if value is None else [f"{where}: {value!r:.80} instead of null"]
    if wanted is float:
        return [] if type(value) in (int, float) else [f"{where}: {value!r:.80} is no number"]
    return [] if type(value) is wanted else [f"{where}: {value!r:.80} is no {wanted.__name__}"]


def resolved(wanted):
    if isinstance(wanted, typing.ForwardRef):
        wanted = wanted.__forward_arg__
    return getattr(types, wanted, typing.Any) if isinstance(wanted, str) else wanted


def all_faults(value, kind, members, where):
    if type(value) is not kind:
        return [f"{where}: {value!r:.80} is no {kind.__name__}"]
    return [fault for name, of, item in members() for fault in faults(item, of, f"{where}/{name}")]


def faults_of_union(value, kinds, where):
    """None when it is one of the kinds; else the faults of the kind that it is most like."""
    best = None
    for kind in kinds:
        found = faults(value, kind, where)
        if not found:
            return []
        if best is None or depth(found) > depth(best):
            best = found
    return best


def depth(found):
    return max(fault.split(":")[0].count("/") for fault in found)


def faults_of_object(value, wanted, where):
    if not isinstance(value, dict):
        return [f"{where}: {value!r:.80} is no {wanted.__name__}"]
    attrs.resolve_types(wanted, vars(types))
    members = {camel(field.name): field for field in attrs.fields(wanted)}
    found = [f"{where}/{name}: {wanted.__name__} has no such member" for name in value if name not in members]
    for name, field in members.items():
        if name in value:
            found += faults_of_member(value[name], wanted, field, f"{where}/{name}")
        elif field.default is attrs.NOTHING and not is_nullable(wanted, field):
            found.append(f"{where}/{name}: {wanted.__name__} must have it")
    return found


def faults_of_member(value, owner, field, where):
    if value is None and field.default is None and not is_nullable(owner, field) and field.type != typing.Optional[types.LSPAny]:
        return [f"{where}: null, where it must be left out"]
    return faults(value, field.type, where)


def is_nullable(owner, field):
    """True where the protocol itself has null: the library keeps such members apart."""
    return types.is_special_property(owner, field.name)


def camel(name):
    first, *others = name.rstrip("_").split("_")
    return first + "".join(word[:1].upper() + word[1:] for word in others)
