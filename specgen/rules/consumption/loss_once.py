"""USE005 Loss is stated once and is below 100 %

Checks
    The loss of liquid paint as a share of the paint used and as a surplus: where both are stated they agree, and neither the loss share nor the transfer efficiency means that all paint misses the part.
Why
    A loss of 40 % requires 1.667 times the paint, a surplus of 40 % 1.4 times. If the two are confused, a fifth of the paint is missing on the last day.
Passes
    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 40 %, loss_surplus: 66.7 %}

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_surplus: 40 %}

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 40 %, loss_surplus: 69 %}

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 99 %}
Fails
    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 40 %, loss_surplus: 40 %}    # at jobs.refit.consumption.loss_surplus

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 100 %}    # at jobs.refit.consumption.loss_share    # also USE009 at jobs.refit.consumption.loss_share

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 40 %, loss_surplus: 70 %}    # at jobs.refit.consumption.loss_surplus

    jobs.refit.consumption: {transfer_efficiency: 0 %}    # at jobs.refit.consumption.transfer_efficiency    # also USE007 at jobs.refit.consumption.transfer_efficiency    # also USE009 at jobs.refit.consumption.transfer_efficiency

    Given second good
    jobs.lids.consumption: {transfer_efficiency: 50 %, loss_share: 100 %, loss_surplus: 10 %}    # at jobs.lids.consumption.loss_share    # also USE009 at jobs.lids.consumption.loss_share

    jobs.refit.consumption: {transfer_efficiency: 60 %, loss_share: 50 %, loss_surplus: 66 %}    # at jobs.refit.consumption.loss_surplus
To put right
    Keep one of the two; as a loss share the surplus is 100 times itself over (100 + itself).
"""

from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule
from specgen.trade.given import rounding_of
from specgen.trade.loss import Surplus, share_of_surplus


@rule("USE005", on=Job, severity=ERROR, source=LOGIC)
def loss_once(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.consumption
    if stated is None:
        return
    if stated.transfer_efficiency is not None and stated.transfer_efficiency.base == 0:
        yield Problem(
            ("consumption", "transfer_efficiency"), "with a transfer efficiency of zero no paint reaches the part"
        )
    share, surplus = stated.loss_share, stated.loss_surplus
    if share is not None and share.to("%") == 100:
        yield Problem(("consumption", "loss_share"), "with a loss of 100 % no paint reaches the part")
    elif share is not None and surplus is not None:
        same = share_of_surplus("share-of-surplus", Surplus(surplus))
        room = rounding_of(share) + rounding_of(surplus)
        if abs(same.number - share.to("%")) > room:
            what = f"a surplus of {surplus} equals a loss of {same.printed()}, but {share} is stated"
            yield Problem(("consumption", "loss_surplus"), what)
