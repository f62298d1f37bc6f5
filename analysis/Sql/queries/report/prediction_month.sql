-- One row: the test month asked for; none when it was not tested.
select jobs, log_loss, log_loss_complaint_only, log_loss_back_off, top_1, top_3
from prediction_by_month
where "month" = strftime($month::date, '%Y-%m')
