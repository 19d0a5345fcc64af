"""Why a command ends before its work is done, in words for the person who called it."""

from __future__ import annotations


class Stopped(Exception):
    """The work could not be done here: a folder that cannot be written, a library that lacks."""

    code = 1


class WrongCall(Stopped):
    """The command was called for something that is not there or makes no sense."""

    code = 2
