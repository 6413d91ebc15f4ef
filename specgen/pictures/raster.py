"""PNG and JPEG: turned upright, no larger than paper shows, and written anew, so that place, camera and remarks stay behind.

The library for pictures (Pillow) is imported with the first of them.
"""

from __future__ import annotations

import struct
import warnings
from io import BytesIO

from specgen.pictures.refused import NotAPicture
from specgen.pictures.vector import WHITE_FROM

STARTS = {"png": b"\x89PNG\r\n\x1a\n", "jpg": b"\xff\xd8\xff", "jpeg": b"\xff\xd8\xff"}
"""What a file of each ending begins with."""

LONGEST_SIDE = 12_000
MOST_PIXELS = 30_000_000
# 178 mm of type at some 260 dots an inch
_SIDE_KEPT = 1_800
# of a PNG; past it, it is a photograph, which a JPEG holds in a tenth
_MOST_BYTES = 1_000_000
_QUALITY = 88
_DAMAGED = (
    OSError,
    ValueError,
    SyntaxError,
    EOFError,
    LookupError,
    TypeError,
    AttributeError,
    OverflowError,
    struct.error,
)


def photograph(data: bytes) -> tuple[str, bytes, int, int, bool]:
    """Media type, bytes, width, height, and whether all of it is white. Raises NotAPicture."""
    from PIL import Image, ImageFile, ImageOps

    # the typesetter lets half a picture pass for the whole process; here it has to be told
    half, ImageFile.LOAD_TRUNCATED_IMAGES = ImageFile.LOAD_TRUNCATED_IMAGES, False
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(BytesIO(data), formats=("PNG", "JPEG")) as image:
                _bounded(*image.size)
                is_png = image.format == "PNG"
                # what a JPEG has too many of is left out while it is decoded
                image.draft("RGB", (_SIDE_KEPT, _SIDE_KEPT))
                upright = ImageOps.exif_transpose(image)
                if upright.mode in ("P", "PA", "LA", "RGBa") or "transparency" in upright.info:
                    upright = upright.convert("RGBA")
                elif upright.mode.startswith("I"):
                    # sixteen bits a pixel
                    upright = upright.point(lambda value: value / 256).convert("L")
                upright.thumbnail((_SIDE_KEPT, _SIDE_KEPT))
                if upright.mode == "RGBA":
                    ground = Image.new("RGBA", upright.size, "white")
                    upright = Image.alpha_composite(ground, upright)
                clean = Image.new("RGB", upright.size)
                clean.paste(upright.convert("RGB"))
    except Image.DecompressionBombError:
        raise _too_many() from None
    except _DAMAGED:
        raise NotAPicture("the picture is damaged and cannot be read to its end", "save it again") from None
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = half
    darkest = clean.convert("L").getextrema()[0]
    white = isinstance(darkest, int | float) and darkest >= WHITE_FROM
    out = BytesIO()
    if is_png:
        clean.save(out, "PNG", optimize=True)
        if out.tell() <= _MOST_BYTES:
            return "image/png", out.getvalue(), *clean.size, white
        out = BytesIO()
    clean.save(out, "JPEG", quality=_QUALITY)
    return "image/jpeg", out.getvalue(), *clean.size, white


def pixels(data: bytes) -> int:
    """How many pixels a PNG or JPEG says it has, without reading them; none of a drawing, and of what is no picture."""
    if not data.startswith(tuple(STARTS.values())):
        return 0
    from PIL import Image

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(BytesIO(data), formats=("PNG", "JPEG")) as image:
                width, height = image.size
    except (Image.DecompressionBombError, *_DAMAGED):
        return 0
    return int(width) * int(height)


def _bounded(width: int, height: int) -> None:
    if max(width, height) > LONGEST_SIDE or width * height > MOST_PIXELS:
        raise _too_many(f"{width:,} x {height:,} pixels")


def _too_many(size: str = "far more pixels") -> NotAPicture:
    return NotAPicture(
        f"the picture has {size}; at most {LONGEST_SIDE:,} a side and {MOST_PIXELS // 1_000_000} million in all are read",
        f"save it smaller: {_SIDE_KEPT:,} pixels a side are what is printed",
    )
