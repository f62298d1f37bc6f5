-- One row per share known that is no share or falls with waiting.
with ordered as (
    select *, lag(share_known) over (partition by component order by months_after) as before
    from reporting_delay
)
select component, months_after, share_known
from ordered
where share_known not between 0 and 1 or share_known < before - 1e-12
