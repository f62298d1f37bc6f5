-- One row per family, component and current part number that fits it, with what an answer says about the part.
-- Its price is that of the current number, else what was last paid for it, else the price of an older number.
with last_paid as (
    select part_number, unit_cost
    from part_orders
    where part_number is not null and unit_cost is not null
    qualify row_number() over (partition by part_number order by ordered_on desc, order_id desc, line desc) = 1
)
select
    fitments.model_family,
    coalesce(fitments.component, parts.component) as component,
    parts.current_number as part_number,
    coalesce(newest.description, parts.description) as description,
    max(fitments.times_seen)::bigint as times_seen,
    bool_or(fitments.basis in ('listed', 'both')) as listed,
    max(fitments.typical_quantity)::integer as quantity,
    coalesce(max(newest.price), max(last_paid.unit_cost), max(parts.price)) as price,
    max(coalesce(newest.returnable_days, parts.returnable_days))::integer as returnable_days,
    bool_and(coalesce(newest.available, parts.available)) as available
from fitments
join parts on parts.part_number = fitments.part_number
left join parts as newest on newest.part_number = parts.current_number
left join last_paid on last_paid.part_number = parts.current_number
where coalesce(fitments.component, parts.component) is not null
group by
    fitments.model_family, coalesce(fitments.component, parts.component), parts.current_number, coalesce(newest.description, parts.description)
order by fitments.model_family, component, times_seen desc, part_number
