-- One row per share outside its interval, or missing without a reason.
select days, "grouping", member, repairs, callbacks, share, lower, upper, missing
from callback_shares
where (share is null) = (missing is null) or share not between lower and upper or callbacks > repairs
