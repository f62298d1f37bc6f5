-- One row per window and group of repairs: followed, came back, came back for anything, not followed.
select days, grouping_kind, member, repairs, callbacks, returns, not_followed
from callback_counts
