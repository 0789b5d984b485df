"""A value that is made when it is first asked for, by one thread."""

from collections.abc import Callable
from threading import RLock
from typing import Any, Generic, Protocol, Self, TypeVar, overload

T = TypeVar("T")


class Maker(Protocol):
    """Whoever has such values; the lock lets one thread make at a time."""

    @property
    def making(self) -> RLock:
        """Held while a value is made, which may ask for others."""


class made_once(Generic[T]):  # noqa: N801 - a decorator
    """Turns a method into an attribute that is made once.

    Unlike ``functools.cached_property`` it holds a lock meanwhile: two threads that ask at
    once are given the same value.
    """

    def __init__(self, make: Callable[[Any], T]) -> None:
        self._make = make
        self.__doc__ = make.__doc__
        self._name = make.__name__

    @overload
    def __get__(self, owner: None, kind: type) -> Self: ...

    @overload
    def __get__(self, owner: Maker, kind: type) -> T: ...

    def __get__(self, owner: Maker | None, kind: type) -> Self | T:
        """Give the value; later on it is found before this is asked."""
        if owner is None:
            return self
        kept = vars(owner)
        with owner.making:
            if self._name not in kept:
                kept[self._name] = self._make(owner)
            made: T = kept[self._name]
        return made
