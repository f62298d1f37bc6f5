-- One row per predictor and group of calls in the test months.
select
    predictor, slice, max(jobs) as jobs,
    max("value") filter (where figure = 'log_loss') as log_loss,
    max("value") filter (where figure = 'top1') as top_1,
    max("value") filter (where figure = 'top3') as top_3,
    max("value") filter (where figure = 'calibration_error') as calibration_error
from prediction_scores
where predictor in ('shipped', 'complaint_only', 'back_off')
group by predictor, slice
order by slice, predictor <> 'shipped', predictor
