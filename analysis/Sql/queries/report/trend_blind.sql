-- One row: the middle series of the last scanned month, and the smallest rise that would have been found in it.
select median(expected) as expected, median(detectable_ratio) as detectable_ratio
from trend_tests
where detectable_ratio is not null and model_family <> 'all'
