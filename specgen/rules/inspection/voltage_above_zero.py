"""INS030 A test voltage is above zero

Checks
    Each inspection point with a test voltage.
Why
    At no voltage every film passes.
Passes
    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 67.5 V
Fails
    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 0 V    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 0.0 kV    # at jobs.rails.inspection.pores.voltage
To put right
    Write the voltage that the standard named at the point asks for at the specified DFT.
"""

from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule, show


@rule("INS030", on=Job, severity=ERROR, source=LOGIC)
def voltage_above_zero(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if point.voltage is not None and point.voltage.base <= 0:
            yield Problem(
                ("inspection", point.id, "voltage"), f"the test voltage of {point.id} is {show(point.voltage)}"
            )
