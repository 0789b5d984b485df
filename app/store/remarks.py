"""The remarks of lessons."""

from app.journal.remarks import LessonRemark
from app.store.keeping_models import LessonRemarkModel
from app.store.kept_by_id import KeptById

_REMARK = LessonRemarkModel.__table__.c


class LessonRemarkRepository(KeptById[LessonRemark]):
    """Remarks in the order of the lessons."""

    model = LessonRemarkModel
    record = LessonRemark
    order = (_REMARK.lesson_day, _REMARK.created_at, _REMARK.id)
