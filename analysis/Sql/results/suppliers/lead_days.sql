-- One row per supplier, group of order lines, days waited and whether they ended with a delivery: lines.
with lines as (
    select
        o.supplier,
        coalesce(o.component, 'unknown') as component,
        date_trunc('quarter', o.ordered_on)::date as quarter,
        coalesce(o.received_on <= log.last_day, false) as arrived,
        (least(coalesce(o.received_on, log.last_day), log.last_day) - o.ordered_on)::integer as days
    from part_orders as o
    cross join int_order_window as log
    where o.ordered_on <= log.last_day
)
select
    supplier,
    coalesce(
        case when component is not null then 'component' end,
        case when quarter is not null then 'quarter' end,
        'all'
    ) as grouping_kind,
    coalesce(component, quarter::varchar, 'all') as member,
    days,
    arrived,
    count(*) as lines
from lines
where days >= 0
group by grouping sets (
    (supplier, days, arrived),
    (supplier, component, days, arrived),
    (supplier, quarter, days, arrived)
)
order by supplier, grouping_kind, member, days, arrived
