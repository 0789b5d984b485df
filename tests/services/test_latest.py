"""A few values are kept, those asked for last."""

from app.services.latest import Latest


def test_what_was_asked_for_last_stays():
    kept: Latest[str, int] = Latest(2)
    kept.put("a", 1)
    kept.put("b", 2)
    assert kept.get("a") == 1
    kept.put("c", 3)
    assert (kept.get("a"), kept.get("b"), kept.get("c")) == (1, None, 3)


def test_a_new_value_takes_the_place_of_the_old_one():
    kept: Latest[str, int] = Latest(1)
    kept.put("a", 1)
    kept.put("a", 2)
    assert kept.get("a") == 2
