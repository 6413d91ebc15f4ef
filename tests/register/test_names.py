"""Which names a record may give its files."""

from __future__ import annotations

from specgen.register.names import record_number, safe


def test_a_name_is_at_most_as_long_as_it_may_be() -> None:
    assert safe("a" * 400)
    assert not safe("a" * 401)


def test_a_folder_of_a_record_has_one_spelling() -> None:
    assert [record_number(name) for name in ("0001", "9999", "10000")] == [1, 9999, 10000]
    assert [record_number(name) for name in ("0000", "001", "00001", "1", "1000000", "x")] == [None] * 6
