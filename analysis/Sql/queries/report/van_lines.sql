-- One row per part on a van's plan or in what was counted aboard: what to do and why.
with changes as (
    select
        van, part_number, any_value(description) as description,
        string_agg(case "action"
            when 'keep' then 'keep ' || quantity
            when 'replace' then 'use up ' || quantity || coalesce(' of ' || label, '')
            when 'add' then 'add ' || quantity
            when 'move_out' then 'give ' || quantity || coalesce(' of ' || label, '') || ' to ' || other_name
            when 'move_in' then 'take ' || quantity || coalesce(' of ' || label, '') || ' from ' || other_name
            when 'send_back' then 'send back ' || quantity || coalesce(' by ' || "by", '')
            when 'take_off' then 'take off ' || quantity || coalesce(' of ' || label, '')
        end, '; ' order by "action", label) as todo,
        sum(quantity) filter (where "action" in ('keep', 'replace', 'move_out', 'send_back', 'take_off')) as on_hand,
        bool_or("action" <> 'keep') as changes
    from (select *, case when contains(lower(other_van), 'van') then other_van else 'van ' || other_van end as other_name from van_changes)
    group by van, part_number
)
select
    coalesce(c.van, p.van) as van,
    coalesce(c.todo, 'carry ' || p.target) as todo,
    coalesce(c.part_number, p.part_number) as part_number,
    coalesce(p.description, c.description) as description,
    coalesce(c.on_hand, 0)::bigint as on_hand,
    coalesce(p.target, 0)::bigint as target,
    p.price,
    p.pieces_per_year,
    p.jobs_per_year
from changes as c
full join van_plan as p
    on c.van = p.van and c.part_number = p.part_number
order by 1, not coalesce(c.changes, true), p.jobs_per_year desc nulls last, 3
