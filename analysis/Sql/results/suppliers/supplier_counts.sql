-- One row per supplier and component (null: all components): pieces received and sent back, parts followed through the
-- early window and those that failed by then.
with received as (
    select
        supplier,
        coalesce(component, 'unknown') as component,
        sum(quantity) as pieces,
        coalesce(sum(quantity) filter (returned_quantity is not null), 0) as told_pieces,
        coalesce(sum(least(returned_quantity, quantity)) filter (returned_quantity is not null), 0) as pieces_returned
    from part_orders
    where received_on <= (select last_day from int_order_window)
    group by all
),
fitted as (
    select
        supplier,
        component,
        count(*) as followed,
        count(*) filter (where again_days <= early.days) as failed
    from int_part_followups
    cross join int_early_window as early
    where followed_days >= early.days and supplier <> 'unknown'
    group by supplier, component
),
both_sides as (
    select supplier, component, pieces, told_pieces, pieces_returned, 0 as followed, 0 as failed
    from received
    union all
    select supplier, component, 0, 0, 0, followed, failed
    from fitted
)
select
    supplier,
    component,
    sum(pieces)::bigint as pieces,
    sum(told_pieces)::bigint as told_pieces,
    sum(pieces_returned)::bigint as pieces_returned,
    sum(followed)::bigint as followed,
    sum(failed)::bigint as failed
from both_sides
group by grouping sets ((supplier), (supplier, component))
order by supplier, component nulls first
