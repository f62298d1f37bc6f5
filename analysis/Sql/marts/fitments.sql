-- One row per model family and part: listed for it, or seen on its jobs.
with kept as (
    select s.*
    from staged_fitments as s
    anti join int_row_status as f using (source_order, source_line)
),
placed as (
    select k.model_family, k.part_raw, k.part_key, k.quantity from kept as k where k.model_family is not null
    union all
    select m.model_family, k.part_raw, k.part_key, k.quantity
    from kept as k
    join int_listed_models as m using (model_key)
    where k.model_family is null
    union all
    select m.model_family, k.part_raw, k.part_key, k.quantity
    from (select *, unnest(string_split(model_pattern, '|')) as pattern from kept) as k
    join int_listed_models as m on m.model_key like k.pattern
    -- a number in the model list is that model, even if it looks like a pattern
    where k.model_family is null and k.model_key not in (select model_key from int_listed_models)
),
listed as (
    select p.model_family, n.current_number as part_number, mode(p.quantity order by p.quantity) as quantity
    from placed as p
    join int_resolved_part_numbers as r on r.supplier = '' and r.raw = p.part_raw and r.typed_key = p.part_key
    join parts as n on n.part_number = r.part_number
    group by p.model_family, n.current_number
),
fitted as (
    select j.model_family, p.part_number, p.component, p.quantity, p.job_id, j.opened_on
    from job_parts as p
    join jobs as j using (job_id)
    where p.part_number is not null and j.model_family is not null
),
usual_quantity as (
    select model_family, part_number, quantity
    from fitted
    group by model_family, part_number, quantity
    qualify row_number() over (partition by model_family, part_number order by count(*) desc, quantity) = 1
),
counted as (
    select model_family, part_number, count(*) as times_seen, max(opened_on) as last_seen
    from (select distinct model_family, part_number, job_id, opened_on from fitted)
    group by model_family, part_number
),
-- one part may be another component on another appliance
usual_component as (
    select model_family, part_number, component
    from fitted
    where component is not null
    group by model_family, part_number, component
    qualify row_number() over (partition by model_family, part_number order by count(*) desc, component) = 1
),
seen as (
    select c.*, q.quantity, u.component
    from counted as c
    join usual_quantity as q using (model_family, part_number)
    left join usual_component as u using (model_family, part_number)
)
select
    coalesce(l.model_family, s.model_family) as model_family,
    coalesce(l.part_number, s.part_number) as part_number,
    coalesce(s.component, n.component) as component,
    case when s.part_number is null then 'listed' when l.part_number is null then 'seen' else 'both' end as basis,
    coalesce(s.times_seen, 0) as times_seen,
    coalesce(l.quantity, s.quantity, 1)::integer as typical_quantity,
    s.last_seen
from listed as l
full join seen as s on s.model_family = l.model_family and s.part_number = l.part_number
left join parts as n on n.part_number = coalesce(l.part_number, s.part_number)
order by model_family, part_number
