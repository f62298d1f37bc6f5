-- One row per order line that stands twice, or is resolved without a number, or the other way round.
select supplier, order_id, line, 'stands twice' as fault from part_orders group by supplier, order_id, line having count(*) > 1
union all
select supplier, order_id, line, 'number and basis disagree' from part_orders where (part_number is null) <> (part_basis = 'unresolved')
