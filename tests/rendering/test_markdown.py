"""The author's Markdown becomes safe HTML, and what would be slow to read is refused."""

from __future__ import annotations

import re

import pytest

from specgen.rendering.failure import ProseError
from specgen.rendering.markdown import to_html

PRINTED = {
    "paragraph": ("Keep *dry* and **clean**.", "<p>Keep <em>dry</em> and <strong>clean</strong>.</p>"),
    "list": ("- one\n- two", "<ul>\n<li>one</li>\n<li>two</li>\n</ul>"),
    "raw html": ("<script>x</script>", "<p>&lt;script&gt;x&lt;/script&gt;</p>"),
    "raw html inside a line": ("a <b onclick=x>b</b>", "<p>a &lt;b onclick=x&gt;b&lt;/b&gt;</p>"),
    "html comment": ("a <!-- b --> c", "<p>a &lt;!-- b --&gt; c</p>"),
    "link": (
        "See [the sheet](https://example.org/a_b_c).",
        '<p>See <span class="link">the sheet<span class="address"> (https://example.org/a_b_c)</span></span>.</p>',
    ),
    "mail": (
        "[write](mailto:a@example.org)",
        '<p><span class="link">write<span class="address"> (a@example.org)</span></span></p>',
    ),
    "link that is its own address": (
        "[https://example.org](https://example.org)",
        '<p><span class="link">https://example.org</span></p>',
    ),
    "script link": ("[press](javascript:alert(1))", '<p><span class="link">press</span></p>'),
    "script link, disguised": ("[press](JAVA&#115;cript:x)", '<p><span class="link">press</span></p>'),
    "file link": ("[open](file:///etc/passwd)", '<p><span class="link">open</span></p>'),
    "data link": ("[open](data:text/html,x)", '<p><span class="link">open</span></p>'),
    "relative link": ("[annex](annex.pdf)", '<p><span class="link">annex</span></p>'),
    "bare address": ("<https://example.org/x_y_z>", '<p><span class="address">https://example.org/x_y_z</span></p>'),
    "picture": ("![gauge](file:///etc/passwd)", '<p><span class="link">gauge</span></p>'),
    "reference": ("[a][b]\n\n[b]: file:///etc/passwd", "<p>[a][b]</p>\n<p>[b]: file:///etc/passwd</p>"),
    "heading": ("# Scope *of* work", '<p class="prose-heading"><strong>Scope <em>of</em> work</strong></p>'),
    "underlined heading": ("Scope\n=====", '<p class="prose-heading"><strong>Scope</strong></p>'),
    "less than": ("a < b & c", "<p>a &lt; b &amp; c</p>"),
    "code": ("`<i>`", "<p><code>&lt;i&gt;</code></p>"),
    "character reference": (
        "a &#x202e;b &#8203; &#0; &amp; &lt;",
        "<p>a &amp;#x202e;b &amp;#8203; &amp;#0; &amp;amp; &amp;lt;</p>",
    ),
    "character reference in code": ("`&#x202e;`", "<p><code>&amp;#x202e;</code></p>"),
    "character reference in a link": ("[&#x202e;](x)", '<p><span class="link">&amp;#x202e;</span></p>'),
    "ampersand in an address": (
        "[a](https://example.org/?a=1&b=2)",
        '<p><span class="link">a<span class="address"> (https://example.org/?a=1&amp;b=2)</span></span></p>',
    ),
    "sign set aside": ("a \ue000#x202e; b", "<p>a \ufffd#x202e; b</p>"),
}


@pytest.mark.parametrize("case", PRINTED)
def test_prose_prints_as(case: str) -> None:
    text, expected = PRINTED[case]
    assert to_html(text) == expected


REFUSED = {
    "long": ("x" * 2_001, "has 2,001 characters; the maximum is 2,000"),
    **{f"run of {sign}": (f"a {sign * 21}", f"more than 20 “{sign}” in a row") for sign in "[(!*_`>#"},
    "deep quotation": ("> " * 11 + "a", "more than 10 deep"),
    "deep list on one line": ("- " * 11 + "a", "more than 10 deep"),
    "deep list over lines": ("\n".join("    " * n + "- a" for n in range(12)), "more than 10 deep"),
    "deep brackets": ("[a" * 11, "more than 10 deep"),
    "deep parentheses": ("[a](" + "(a" * 11, "more than 10 deep"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_prose_is_refused(case: str) -> None:
    text, message = REFUSED[case]
    with pytest.raises(ProseError) as refusal:
        to_html(text)
    assert message in str(refusal.value)
    assert str(refusal.value).startswith(f"The text beginning “{' '.join(text[:60].split())[:40]}”")


@pytest.mark.parametrize("levels", [20, 100, 160])
def test_emphasis_within_emphasis_ends_and_loses_no_word(levels: int) -> None:
    opened = "".join(f"{'*_'[n % 2]}a{n} " for n in range(levels))
    html = to_html(opened.strip() + "".join(f" z{'*_'[n % 2]}" for n in reversed(range(levels))))
    words = re.sub("<[^>]+>", "", html).split()
    assert [word for word in words if word.startswith("a")] == [f"a{n}" for n in range(levels)]
    assert html.count("<em>") <= 22


def test_the_most_that_is_allowed_passes() -> None:
    assert to_html("x" * 2_000) == f"<p>{'x' * 2_000}</p>"
    assert to_html("a " + "(" * 10) == "<p>a ((((((((((</p>"
    assert to_html("> " * 10 + "a").count("<blockquote>") == 10
