"""Stand-ins for what the Lesson page needs: a report without days, nobody's bundle."""

from app.services.lesson.report import LessonReport


class FakeLessons:
    def report(self, first_day, last_day):
        return LessonReport(first_day, last_day, "40 min on one day.", (), (), (), (), (), (), ())

    def remarks(self):
        return ()


class FakeBundles:
    visiting = None


class FakeSharing:
    def shared(self):
        return ()
