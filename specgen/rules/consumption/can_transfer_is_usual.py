"""USE007 The transfer efficiency of an aerosol can is in the usual range

Checks
    The transfer efficiency of a job that sprays from aerosol cans, against the usual range from profiles and edges outdoors up to a flat panel with a trained hand.
Why
    If it is set too high, the cans run out before the last part; if too low, boxes of cans are left to age. No published measurement is known.
Passes
    jobs.refit.consumption: {transfer_efficiency: 45 %}

    jobs.refit.consumption: {transfer_efficiency: 30 %}

    jobs.refit.consumption: {transfer_efficiency: 70 %}

    Given second good
    jobs.rails.consumption: {transfer_efficiency: 90 %}
Fails
    jobs.refit.consumption: {transfer_efficiency: 90 %}    # at jobs.refit.consumption.transfer_efficiency

    jobs.refit.consumption: {transfer_efficiency: 20 %}    # at jobs.refit.consumption.transfer_efficiency

    jobs.refit.consumption: {transfer_efficiency: 29.9 %}    # at jobs.refit.consumption.transfer_efficiency

    Given second good
    jobs.lids.consumption: {transfer_efficiency: 70.1 %}    # at jobs.lids.consumption.transfer_efficiency
To put right
    Weigh one can and one panel before and after, and write the figure measured; then accept the finding with a waiver that names the panel.
"""

from specgen.model.product import PackForm
from specgen.rules.kit import WARNING, Job, Problem, Problems, Spec, date, rule, table
from specgen.trade.cans import usual_transfer


@rule(
    "USE007",
    on=Job,
    severity=WARNING,
    source=table("transfer_efficiency_aerosol").citation,
)
def can_transfer_is_usual(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.consumption.transfer_efficiency if job.consumption is not None else None
    if stated is None or all(product.pack.form is not PackForm.AEROSOL for product in spec.products_of(job)):
        return
    low, high = (
        usual_transfer("profiles, edges, outdoors")[0].quantity,
        usual_transfer("flat panel, trained hand")[1].quantity,
    )
    if not low <= stated <= high:
        what = f"transfer efficiency {stated}; from a can {low} to {high} is usual"
        yield Problem(("consumption", "transfer_efficiency"), what)
