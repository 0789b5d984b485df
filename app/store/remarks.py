"""The remarks of lessons."""

from app.journal.remarks import LessonRemark
from app.store.keeping_models import LESSON_REMARK_TABLE
from app.store.kept_by_id import KeptById

_REMARK = LESSON_REMARK_TABLE.c


class LessonRemarkRepository(KeptById[LessonRemark]):
    """Remarks in the order of the lessons."""

    table = LESSON_REMARK_TABLE
    record = LessonRemark
    order = (_REMARK.lesson_day, _REMARK.created_at, _REMARK.id)
