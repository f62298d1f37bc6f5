-- One row per figure outside its interval, or outside what it can be.
select predictor, slice, figure, value, lower, upper
from prediction_scores
where value < lower
    or value > upper
    or (figure not in ('log_loss', 'brier') and (value < 0 or value > 1))
    or (value is null) = (missing is null)
