"""Instructions that spoil the coat or endanger people: each row of the table is told by its sentence alone, and sound ones pass."""

from __future__ import annotations

from specgen.facts.job.practices import practices
from specgen.standards.tables import Row, table
from tests.good_spec import good_with, spec_of

FAULTY = {
    "fitting": "The brake discs are sprayed with the wheels.",
    "unmasked": "Threads are not masked.",
    "drain": "Drain holes are closed with filler.",
    "faying": "Friction faces get all three coats.",
    "shop_air": "Blow off with air straight from the compressor.",
    "oily_solvent": "Wash road dirt off with diesel.",
    "one_rag": "The same rag serves for the whole train.",
    "chlorinated": "Degrease with trichloroethylene.",
    "sea_water": "Wash down with sea water.",
    "silica": "Blast the old paint off with quartz sand.",
    "dirty_grit": "Grit is swept up and used again.",
    "polished": "Bare metal is polished before priming.",
    "night_bare": "Blasted bare steel is left overnight.",
    "converter": "Rust converter on the remaining rust, then the primer.",
    "left_rust": "Tight mill scale may stay.",
    "gelcoat": "Sand through the gelcoat.",
    "acid_left": "Phosphoric acid is left to dry.",
    "strong_acid": "Etch galvanized parts with hydrochloric acid.",
    "hot_paint": "Burn the old paint film off with a torch.",
    "fumes_lead": "Lead primer is dry-sanded.",
    "solvent_soak": "Wipe with thinner until soft.",
    "by_eye": "Hardener is added by eye.",
    "more_hardener": "In the cold add more hardener.",
    "at_will": "Thin as required.",
    "thinned_again": "Thickened paint is thinned and used.",
    "no_induction": "Spray without induction time.",
    "no_stir": "The zinc primer is not stirred.",
    "other_hardener": "Hardener of another maker may be used.",
    "in_rain": "Work goes on in light rain.",
    "forecast": "The humidity is taken from the weather forecast.",
    "plant_running": "The duct is coated while the plant is running.",
    "wrapped": "Parts are wrapped straight after the last coat.",
    "weld_after": "Brackets are welded on after the last coat.",
    "wash_fresh": "Stickers are put on the painted door the next day.",
    "full_heat": "The kiln goes to full heat at once.",
    "no_feather": "The old paint is cut square at the spot.",
    "no_stripe": "One coat, no stripe coat.",
    "coat_thicker": "Where the surface is rough, coat thicker.",
    "aluminium_on_zinc": "Damaged zinc is touched up with aluminium spray.",
    "skin_thinner": "Paint on hands is washed off with thinner.",
    "dust_mask": "Dust masks are worn for spraying.",
    "gloves_weak": "Cotton gloves are worn for mixing.",
    "open_rags": "Rags are kept in an open box.",
    "into_water": "Wash water from the surface treatment runs into the drain.",
    "household": "Rests of paint go to household waste.",
    "warm_can": "Cold cans are warmed on the radiator.",
    "no_earth": "The pump needs no earth.",
    "gun_rinse": "The gun is cleaned by spraying thinner into the open air.",
    "finger": "A blocked tip is cleared with a finger.",
    "oxygen": "Freshen the air with oxygen.",
    "top_only": "Extraction takes the air from the top.",
    "standby_busy": "The foreman watches the manhole from time to time.",
    "goes_in": "If he falls, the standby goes in.",
    "one_permit": "One permit for the whole job.",
    "seldom_tested": "Once a week.",
    "smoothed": "The gauge is not zeroed.",
    "by_photo": "Surfaces are released from photographs sent later.",
    "judgement": "Cleanliness is to the blaster's satisfaction.",
    "zinc_thin": "Damaged zinc is repaired with 50 µm of paint.",
    "acetone_grp": "lids are immersed in acetone.",
}
SOUND = (
    "Windows are masked with film; frames are painted.",
    "Anodes are wrapped in foil and the hull is coated.",
    "Nameplates are taped over and the cover is painted.",
    "Threads and seals stay bare when the rest is coated.",
    "Wipe with one cloth soaked in degreaser and dry with another.",
    "Wipe the diesel off with degreaser.",
    "Screws are cleaned with petrol-free cleaner.",
    "River sand is washed off with fresh water.",
    "Half of the base is mixed with half of the hardener.",
    "Spray at once after dusting.",
    "The masking film is warmed with a hot-air gun for its release.",
    "Inspect the prepared surface with a torch.",
    "Masking tape ends at the edge of the repair.",
    "Cut back the edges square to sound paint and feather them.",
    "Sharp edges are rounded; leave no edges sharp.",
    "Full load is applied 14 days later.",
    "The first coat is thicker than the second.",
    "Wash water is led into a tank and flows into the drain only after treatment.",
    "Grease and oil are removed; oil may be left nowhere.",
    "Lettering is sprayed the next day.",
    "Polish out dust the next day.",
    "A coupon is immersed in solvent for the test.",
    "Blasted parts stand in the dry room overnight.",
    "Sanded plastic parts may stand overnight.",
    "The topcoat is applied to the sanded surfacer the next day.",
    "The surfacer is sanded and the topcoat follows the next day.",
    "Leather gloves are worn for carrying the lids.",
    "Zinc paint is shaken for two minutes.",
    "The pump is grounded.",
    "The gauge is verified each morning.",
    "Cans are kept away from heaters.",
    "A new permit for each shift.",
)
_OF_A_PLACE = {"statement": "ventilation", "permit": "confined_space", "atmosphere_test": "confined_space"}


def _told(changes: dict[str, str]) -> dict[str, tuple[str, str]]:
    """By the id of the row: the last step of the address, and the words."""
    spec = spec_of(good_with(changes))
    return {row["id"]: (path[-1], words) for path, words, row in practices(spec.jobs["refit"], spec)}


def _rows() -> tuple[Row, ...]:
    return tuple(table("practices_in_words").rows)


def test_each_row_is_told_by_its_sentence_alone() -> None:
    rows = {row["id"]: row["where"] for row in _rows()}
    assert set(FAULTY) == set(rows)
    anywhere = [id for id, where in rows.items() if not where]
    # a scope takes so many signs and no more
    halves = (anywhere[::2], anywhere[1::2])
    told = {k: v for ids in halves for k, v in _told({"jobs.refit.scope": "\n".join(FAULTY[id] for id in ids)}).items()}
    assert [id for id in anywhere if id not in told or told[id][1] not in FAULTY[id]] == []
    assert set(told) == set(anywhere)


def test_a_row_of_one_leaf_is_told_there_alone() -> None:
    held = [row for row in _rows() if row["where"]]
    assert len(held) >= 4
    for row in held:
        leaf, said = row["where"], FAULTY[row["id"]]
        place = f"jobs.refit.{_OF_A_PLACE[leaf]}.{leaf}"
        assert _told({place: said}).get(row["id"], ("", ""))[0] == leaf, said
        assert row["id"] not in _told({"jobs.refit.scope": said})


def test_what_a_specifier_rightly_writes_is_no_order() -> None:
    told = _told({"jobs.refit.scope": "\n".join(SOUND)})
    assert told == {}


def test_what_forbids_excuses_its_clause_alone() -> None:
    assert _told({"jobs.refit.scope": "Never clean the frame with diesel."}) == {}
    assert set(_told({"jobs.refit.scope": "No smoking, clean the frame with diesel."})) == {"oily_solvent"}
