-- One row per basis and grouping whose groups do not add up to the calls of the basis.
with events as (
    select basis, count(*) as calls
    from rate_events
    group by basis
),
grouped as (
    select basis, grouping_kind, sum(calls) as calls_in_groups
    from rate_groups
    group by basis, grouping_kind
)
select g.basis, g.grouping_kind, g.calls_in_groups, coalesce(e.calls, 0) as calls
from grouped as g
left join events as e using (basis)
where g.calls_in_groups <> coalesce(e.calls, 0)
