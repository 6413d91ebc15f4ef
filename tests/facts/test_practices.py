"""Instructions that spoil the coat or endanger people: each row of the table is told by its sentence alone, and sound ones pass."""

from __future__ import annotations

import pytest

from specgen.facts.job.circumstances import NAMES
from specgen.facts.job.practices import named, ordered, practices
from specgen.standards.tables import table
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
    "acetone_grp": "Parts stand in a closed bag overnight.",
    "natural_draught": "Natural draught through the open manway is enough.",
    "spent_grit": "Blast with the spent garnet from the hall.",
    "mask_off": "Hoods come off at once in the booth.",
    "filter_for_isocyanate": "Half masks A2P3 are worn for spraying.",
    "hard_on_zinc": "Blast at 7 bar until evenly white.",
    "no_clear": "No clear coat on the inside.",
    "frozen_store": "Paint is stored outdoors in winter.",
    "wet_blasted": "Wash the blasted steel with tap water.",
    "bare_hands": "Cleaned plates are turned with bare hands.",
    "as_delivered": "Sheets are painted as delivered.",
    "chloride_cleaner": "Stains go with bleach.",
    "strong_on_plastic": "Rub with acetone.",
    "wet_wood": "Fresh timber may be primed.",
    "filler_over": "Dents are filled with filler over the rust.",
    "silicone_joint": "Gaps are closed with silicone.",
    "edges_left": "Edges stay as cut.",
    "dust_on_wet": "Grinding of the next part beside fresh paint.",
    "stirred_by_stick": "Stir with a stick.",
    "mixed_ahead": "Paint is mixed the evening before.",
    "until_gelled": "It is used until it no longer flows.",
    "foreign_thinner": "Thin with petrol.",
    "heavy_coat": "Both coats in one go.",
    "defects_left": "Runs are left.",
    "dew_ignored": "The dew point need not be read.",
    "on_frost": "Frozen parts are primed.",
    "flame_dried": "Damp places are dried with a gas burner.",
    "direct_fired": "A direct-fired blower warms the bay.",
    "in_the_sun": "The hull is sprayed in full sun.",
    "as_soon_as_dry": "The second coat follows as soon as the first feels dry.",
    "any_time_later": "The finish follows whenever it suits.",
    "out_wet": "Frames are moved outdoors while still tacky.",
    "wet_too_soon": "The tank is filled the next morning.",
    "fitted_wet": "Covers are bolted on while still soft.",
    "low_dropped": "Low readings are left out.",
    "easy_places": "Readings are taken where it is easy.",
    "zeroed_seldom": "The gauge is verified once a month.",
    "hold_passed": "Hold points may be skipped.",
    "test_spots_left": "Cross-cuts are left as they are.",
    "one_of_all": "One beam of the order",
    "dry_swept": "Chips are brushed together.",
    "not_tested_lead": "The old paint need not be tested.",
    "eats_there": "Meals are taken in the paint shop.",
    "alone_inside": "The sprayer works alone.",
    "mains_inside": "Lamps of 230 V light the inside.",
    "air_back": "Extracted air is led back into the hall.",
    "no_gloves": "Small parts are wiped without gloves.",
    "trigger_tied": "The trigger is tied open.",
    "blaster_mask": "Blasters work with a dust mask.",
    "sawdust": "Spills are taken up with sawdust.",
    "mix_closed_up": "Mixed rests stand in a closed tin.",
    "left_to_evaporate": "Used thinner may evaporate in the yard.",
    "into_fire": "Empty drums are burnt.",
    "water_on_fire": "A fire is put out with a water hose.",
    "stored_hot": "Thinner is kept beside the heater.",
    "other_paint_touch_up": "Scratches are touched up with any grey paint.",
    "unprepared_spot": "Scratches are painted over without sanding.",
    "no_label": "Unlabelled tins are used up.",
    "drink_bottle": "Thinner is handed out in water bottles.",
    "thinner_beyond": "In winter thin beyond the data sheet.",
    "wet_blast_no_dry": "The steel may be slightly damp.",
    "salted_road": "Washing is not needed.",
    "wrong_filter_paper": "Sand the film while still soft.",
    "blown_by_mouth": "Dust is wiped off with the hand.",
    "lifting_accepted": "Slight lifting is accepted.",
    "weak_thinner": "The mix is thinned with white spirit.",
    "standby_away": "Foreman reachable by mobile phone",
    "rescue_by_call": "The fire brigade is called.",
    "unkeyed": "Coat again without abrading.",
    "no_extinguisher": "No fire extinguisher is needed.",
    "loaded_fresh": "Girders are loaded the same evening.",
    "no_account": "Overspray on the discs is of no account.",
    "solvent_on_waterborne": "Rollers are kept in white spirit.",
    "iron_vessel": "Paint is poured into steel buckets.",
    "passivated_left": "The passivation stays on the zinc.",
    "thinner_on_fresh": "Wipe with thinner, then tack cloth.",
    "late_wipe": "Wipe with a dry cloth.",
    "warm_later": "Cold panels are brought in and at once sprayed.",
    "sealed_wet": "Bolts need no coat.",
    "shop_primer_stays": "The shop primer stays under the zinc epoxy.",
    "gloss_left": "Gloss may stay in corners.",
    "tape_left": "Masking tape stays on for three weeks.",
    "open_tins": "Opened hardener tins stay open.",
    "left_in_pump": "The pump is left full over lunch.",
    "on_tacky": "The finish is sprayed while the intermediate coat is still tacky.",
    "primer_alone": "Parts with the primer stand outside over the winter.",
    "readings_below": "Half of the readings may be below the limit.",
    "from_memory": "Colour from memory",
    "asthma": "Painters with asthma spray in turns.",
    "worn_too_long": "Gloves are worn for a week.",
    "not_worn": "Goggles are not worn.",
    "booth_filters": "The booth runs without filter mats.",
    "breathing_air": "Breathing air comes from the workshop compressor.",
    "buried": "Residues are buried on site.",
    "no_records": "No records are kept.",
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
    "Rescue by the site crew with tripod and breathing apparatus, fire brigade as well.",
    "A trained person at the manhole, in radio contact with the control room.",
    "Abrade, wash and coat again.",
    "A fire extinguisher stands ready; no welding without a fire watch outside.",
    "Girders are loaded once the film is hard.",
    "Rollers are washed with water; dried paint is taken off with solvent.",
    "Paint is stirred in buckets of plastic or stainless steel.",
    "Passivation is swept off.",
    "Wipe with degreaser and let it evaporate, then tack cloth.",
    "Sand with P400, wipe with degreaser.",
    "Cold panels are brought in the day before and warm through.",
    "Bolts are replaced by galvanised ones after coating.",
    "Rain expected within the hour stops work.",
    "Nothing into drain, soil or household waste.",
    "The shop primer is blasted off.",
    "No gloss may remain.",
    "Tape is pulled within 20 minutes.",
    "Tins are closed at once and never left open.",
    "The pump is flushed with solvent before breaks.",
    "Tape is pulled while the coat is still soft.",
    "Primed parts stand indoors over the winter.",
    "None of the readings may be below the limit.",
    "Persons with asthma do not work here.",
    "Gloves are changed each shift.",
    "Goggles are worn for mixing.",
    "Breathing air to EN 12021, tested.",
    "Nothing is buried or burnt.",
    "Records are kept for ten years.",
    "Dust nibs are sanded out.",
    "Forced extraction from the lowest point; natural draught alone is not enough.",
    "The manway stays open and a fan draws air from the bottom.",
    "Use abrasive that never met steel grit.",
    "Sweep with garnet, never with steel grit or chilled iron.",
    "Spent abrasive is vacuumed up.",
    "Hoods stay on until the booth has cleared.",
    "Masks come off outside the booth only.",
    "Half masks A2P3 are worn for mixing and for brush work.",
    "Supplied air for spraying; half mask for sanding.",
    "Blast at no more than 3 bar.",
    "Weld zones are blasted to Sa 2 1/2 before galvanizing.",
    "No clear coat over dust.",
    "Paint is stored indoors at 5 to 30 °C and never outdoors.",
    "Paint that has frozen is discarded.",
    "Salt left after blasting is washed off, then the steel is blasted again.",
    "Prepared faces are touched with clean gloves only, never with bare hands.",
    "Parts are degreased as delivered, then primed.",
    "Primed parts as received are washed and abraded.",
    "Chlorine-free cleaner.",
    "Wipe with plastic cleaner, not with acetone.",
    "Boards are dried to at most 15 % moisture.",
    "Filler goes on bare, dry, abraded metal.",
    "Joints are closed with paintable sealant.",
    "Gaps are closed with silicone after the last coat.",
    "Edges are rounded to 2 mm; none stays as cut.",
    "Blasting stops before spraying begins and the hall is aired.",
    "Stir with a power mixer; scrape the bottom by hand first.",
    "Paint is mixed for one hour of work within its pot life.",
    "Mixed paint is used only within its pot life.",
    "Thin with the thinner named, at most 5 %.",
    "Both coats are measured together.",
    "The total may not be laid in one coat.",
    "Runs are sanded out and coated again.",
    "Pores are opened, filled and tested again.",
    "Read the dew point before each coat.",
    "Work stops in frost.",
    "Dry with warm air of an indirect heater.",
    "Direct-fired heaters are not allowed.",
    "Work in the shade; surfaces below 35 °C.",
    "Overcoat after 8 h; touch-dry is no sign of it.",
    "The second coat follows after 16 h and within 30 days.",
    "The tank is filled 14 days after the last coat.",
    "Test holes are filled with paint.",
    "Parts are bolted together once the film is cured.",
    "Readings are taken also where it is hard to reach.",
    "The gauge is verified on shims each day and certified yearly.",
    "Work stops at a hold point until it is signed.",
    "The inspector may release by email; the release is recorded in writing.",
    "Test places are repaired with the same system.",
    "Chips are vacuumed and wetted, never swept dry.",
    "The old paint was tested: no lead, no chromate.",
    "No food or drink in the paint shop.",
    "Eat and drink only outside, hands washed.",
    "Nobody works alone in the tank.",
    "Lamps of 24 V, the transformer outside.",
    "Exhaust air leaves over the roof.",
    "Gloves of butyl; no bare hands.",
    "The trigger is locked before the gun is put down.",
    "Blasters wear air-fed helmets; helpers wear dust masks while sweeping.",
    "Spills are taken up with mineral binder, not with sawdust.",
    "Mixed rests harden in the open tin in the open air and are then waste.",
    "Solvent evaporates from the film in 20 minutes.",
    "Let the cleaner evaporate from the surface before spraying.",
    "Rags and cans are never burnt.",
    "In case of fire foam or powder; no water jet.",
    "Cans are stored in a cabinet away from heaters.",
    "Scratches are touched up with the same system.",
    "Scratches are sanded, degreased and touched up.",
    "Tins without labels are rejected.",
    "Thinner is never filled into drink bottles.",
    "No more thinner than the data sheet allows; thinning beyond the data sheet is not allowed.",
    "The surface must be dry; damp steel is not coated.",
    "Degrease before sanding, else oil is sanded in.",
    "No cleaning with steam.",
    "Sand wet with P800 once it is through-dry.",
    "Blow off with dry, oil-free air and vacuum.",
    "Rags go wet into a closed metal bin.",
    "Rags with paint: spread out to dry outdoors or under water in a closed metal bin.",
    "The colour is matched by eye under a daylight lamp.",
    "Add hardener by weight, 5:1 on the scales.",
    "Cans are warmed in water of 25 °C at most.",
    "The plant is shut down and cooled to 40 °C before work.",
    "Coat the pipe when it is out of service and cold.",
    "No person enters without a permit.",
    "Stop when rain begins; parts stay under the roof.",
    "Nothing is coated on frosted or wet steel.",
    "In the cold the paint is stored at 20 °C the night before.",
    "Tape is pulled while the film is still soft.",
    "Doors are hung once hard; seals are fitted on the dry film.",
    "The film is wet for 20 minutes; keep dust away.",
    "If the interval is passed, abrade until matt and wash.",
    "Mark low readings and coat these places again.",
    "A fire extinguisher with foam stands at the booth.",
    "The extraction runs 20 minutes after spraying; only then are hoods taken off.",
    "Where the zinc is damaged, abrade and apply 100 µm of zinc-rich epoxy.",
    "Cut out loose paint back to a firm edge and feather it.",
    "Let the detergent act for 5 minutes and rinse before it dries.",
    "Wash with citric acid and rinse until neutral.",
    "Glass and seals are removed or masked before spraying.",
    "Anodes are fitted after the last coat.",
    "Faying faces get the primer only.",
    "The finish is not laid on the faying surfaces.",
    "The top coat stops 20 mm before the contact surfaces.",
    "All coats go on, masking tape on the friction surfaces.",
    "Both coats are laid up to the faying surfaces.",
    "Faying surfaces are coated with zinc silicate tested for slip.",
    "No paint goes on the threads.",
    "Paint is applied to the threads after assembly.",
    "The stripe coat goes on the welds and edges.",
    "Drain holes are kept open.",
    "Keep away from heat, sparks and open flame. No smoking.",
    "Pressurised container: do not pierce or burn, even after use.",
    "Do not breathe spray. Use only outdoors or in a well-ventilated area.",
    "Turn the can over and clear the valve.",
    "Shake for two minutes after the ball is heard.",
    "Stir each tin to an even colour, pour the hardener in while stirring.",
    "No thinning. Clean tools with the cleaner named.",
    "The second tank is coated while the first cures.",
)


def _told(changes: dict[str, str]) -> dict[str, tuple[str, str]]:
    """By the id of the row: the last step of the address, and the words."""
    spec = spec_of(good_with(changes))
    return {row["id"]: (path[-1], words) for path, words, row in practices(spec.jobs["refit"], spec)}


def test_every_row_has_its_sentence() -> None:
    assert set(FAULTY) == {row["id"] for row in table("practices_in_words").rows}


@pytest.mark.parametrize("row", FAULTY)
def test_each_row_is_told_by_its_sentence_alone(row: str) -> None:
    told = dict(ordered(FAULTY[row]))
    everywhere = {one["id"] for one in table("practices_in_words").rows if not one["when"] and not one["where"]}
    assert (set(told) & everywhere) | {row} == {row}
    assert told[row] in FAULTY[row]


@pytest.mark.parametrize("said", SOUND)
def test_what_a_specifier_rightly_writes_is_no_order(said: str) -> None:
    assert ordered(said) == ()


def test_a_row_of_one_leaf_is_told_there_alone() -> None:
    held = [
        row
        for row in table("practices_in_words").rows
        if row["where"] and not row["when"] and row["where"] != "before_next"
    ]
    assert len(held) >= 5
    places = {
        "statement": "jobs.refit.ventilation.statement",
        "permit": "jobs.refit.confined_space.permit",
        "atmosphere_test": "jobs.refit.confined_space.atmosphere_test",
        "frequency": "jobs.refit.inspection.look.frequency",
        "standby": "jobs.refit.confined_space.standby",
        "rescue": "jobs.refit.confined_space.rescue",
        "if_failed": "jobs.refit.inspection.look.if_failed",
    }
    for row in held:
        leaf, said = row["where"], FAULTY[row["id"]]
        assert _told({places[leaf]: said}).get(row["id"], ("", ""))[0] == leaf, said
        assert row["id"] not in _told({"jobs.refit.scope": said})


@pytest.mark.parametrize(
    ("said", "row"),
    [
        ("All three coats also go on the faying surfaces of the slip-resistant bolted joints.", "faying"),
        ("The finish is laid over the contact surfaces as well.", "faying"),
        ("Friction surfaces are painted like the rest.", "faying"),
        ("The top coat goes on the threads as well.", "fitting"),
        ("All coats are applied to the edges to be welded.", "fitting"),
        ("Primer and finish are laid on the sliding surfaces.", "fitting"),
        ("Oxygen is read before the first entry of the week.", "seldom_tested"),
        ("Before the first entry, by the foreman.", "seldom_tested"),
    ],
)
def test_a_practice_is_told_in_other_words_too(said: str, row: str) -> None:
    assert row in dict(ordered(said))


@pytest.mark.parametrize(
    "said",
    [
        "Before the first entry of each shift.",
        "Before the first entry and all the time.",
        "Before the first entry and every two hours.",
        "Before the first entry and while anybody is inside.",
    ],
)
def test_air_that_is_tested_often_passes(said: str) -> None:
    assert "seldom_tested" not in dict(ordered(said))


def test_what_forbids_excuses_its_clause_alone() -> None:
    assert _told({"jobs.refit.scope": "Never clean the frame with diesel."}) == {}
    assert set(_told({"jobs.refit.scope": "No smoking, clean the frame with diesel."})) == {"oily_solvent"}


def test_a_row_holds_in_its_circumstances_alone() -> None:
    for row in table("practices_in_words").rows:
        assert set(row["when"].split()) <= NAMES, row["id"]
    alone = {"jobs.refit.scope": "The sprayer works alone."}
    assert "alone_inside" not in _told(alone)
    assert "alone_inside" in _told(alone | {"jobs.refit.workplace": "confined-space"})


def test_texts_of_products_preparations_and_coats_are_read() -> None:
    changes = {
        "products.primer.hazards.disposal": "Throw rags on a heap.",
        "preparations.sand-steel.steps.sand.text": "Sand, then wipe with diesel.",
        "systems.cab.layers.primer.before_next": "Wipe with the same rag.",
    }
    spec = spec_of(good_with(changes))
    records = (spec.products["primer"], spec.preparations["sand-steel"], spec.systems["cab"])
    found = [(named(record, path), row["id"]) for record in records for path, _, row in practices(record, spec)]
    assert found == [("primer", "open_rags"), ("sand", "oily_solvent"), ("primer", "one_rag")]
