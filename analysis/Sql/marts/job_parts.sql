-- One row per part line fitted on a job; a number that a kit replaces gives one row for each piece of the kit.
with ordered_for as (
    select job_id, part_number, min(supplier) as supplier
    from part_orders
    where job_id is not null and part_number is not null
    group by job_id, part_number
    having count(distinct supplier) = 1
),
owner_of as (
    select alias_key, min(supplier) as supplier
    from int_part_aliases
    where supplier <> ''
    group by alias_key
    having count(distinct supplier) = 1
),
sellers as (
    select part_number, supplier, min(ordered_on) as first_on
    from part_orders
    where part_number is not null
    group by part_number, supplier
),
-- from its first seller's first day until there is a second one
only_seller as (
    select part_number, arg_min(supplier, first_on) as supplier, min(first_on) as from_on, case when count(*) > 1 then max(first_on) end as until_on
    from (
        from sellers
        qualify row_number() over (partition by part_number order by first_on, supplier) <= 2
    )
    group by part_number
),
-- under the name that it counts by
named as (
    select
        f.*,
        case
            when x.component is null then coalesce(p.component, f.component, w.component)
            -- under its own words where they say more than the component's name
            else coalesce(case when n.says_more then nullif(n.own_component, x.component) end, x.appliance_type || '_' || x.component)
        end as component_name,
        x.component is not null as is_foreign
    from int_part_pieces as f
    left join parts as p on p.part_number = f.current_number
    left join int_worded_components as w on w.description = lower(trim(f.description))
    left join int_foreign_components as x on x.appliance_type = f.appliance_type and x.component = coalesce(p.component, f.component, w.component)
    left join part_names as n on n.description = lower(trim(coalesce(f.description, p.description)))
)
select
    f.job_id,
    coalesce(m.line, 1) as line,
    f.part_raw,
    f.current_number as part_number,
    f.basis as part_basis,
    f.fitted_number,
    coalesce(c.component, f.component_name) as component,
    f.pieces::integer as quantity,
    f.from_van,
    coalesce(f.supplier, o.supplier, case when f.basis = 'alias' then a.supplier end, s.supplier) as supplier,
    case when f.place = 1 then f.unit_price end as unit_price,
    f.source_file,
    f.source_line
from named as f
left join ordered_for as o on o.job_id = f.job_id and o.part_number = f.current_number
left join owner_of as a on a.alias_key = f.part_key
left join only_seller as s on s.part_number = f.current_number and f.fitted_on >= s.from_on and (s.until_on is null or f.fitted_on < s.until_on)
left join int_part_line_numbers as m
    on m.source_order = f.source_order and m.source_line = f.source_line and m.group_no = f.group_no and m.piece = f.place
-- the owner may merge what counts apart with another component
left join int_answered_components as c on f.is_foreign and c.description = replace(f.component_name, '_', ' ')
order by f.job_id, line
