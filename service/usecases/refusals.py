"""Why a wish cannot be fulfilled; apart, so that a command can name it without loading what fulfils it."""


class CannotJudgeError(Exception):
    """A board's part is not known well enough to be judged; says what to do."""
