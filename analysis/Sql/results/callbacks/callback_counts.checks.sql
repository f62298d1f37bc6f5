-- One row per window and group with more callbacks than repairs, or whose groups do not add up to all repairs.
select days, grouping_kind, member, repairs, callbacks
from callback_counts
where callbacks > repairs or callbacks > returns
union all
select days, grouping_kind, 'all of them', sum(repairs), max(total)
from (
    select *, max(repairs) filter (where grouping_kind = 'all') over (partition by days) as total
    from callback_counts
)
group by days, grouping_kind
having sum(repairs) <> max(total)
