-- One row per group of repairs: how many came back within the callback window.
select "grouping" as group_kind, member, repairs, callbacks, share, lower, upper, missing, not_followed, stands_out
from callback_shares
where days = $days and "grouping" in ('all', 'month', 'component')
order by group_kind, callbacks desc, member
