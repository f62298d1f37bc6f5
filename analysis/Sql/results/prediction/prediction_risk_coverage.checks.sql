-- One row per point whose shares are impossible.
select slice, coverage, risk, jobs
from prediction_risk_coverage
where coverage not between 0 and 1 or risk not between 0 and 1 or jobs <= 0
