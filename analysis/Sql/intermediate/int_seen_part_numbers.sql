-- One row per part number that a shop without a price list must know: from its orders, jobs and van counts. A number
-- seen once on a job and one character away from a common one is a typing error; it goes to the review list.
with has_no_price_list as (
    select count(*) = 0 as yes from staged_parts
),
order_lines as (
    select o.*
    from staged_part_orders as o
    anti join int_row_status as f using (source_order, source_line)
    where (select yes from has_no_price_list)
),
-- the second number of a line is the maker's, the first then is the supplier's own
suppliers_own as (
    select part_key from order_lines where other_key <> '' and part_key <> other_key
    union
    select alias_key from staged_part_aliases
),
written as (
    select other_raw as raw, other_key as part_key, 'order' as place, order_id as paper, source_order, source_file, source_line from order_lines
    union all
    select part_raw, part_key, 'order', order_id, source_order, source_file, source_line from order_lines
    union all
    select part_raw, part_key, 'job', job_id, source_order, source_file, source_line from int_job_part_rows where (select yes from has_no_price_list)
    union all
    select part_raw, part_key, 'van', van, source_order, source_file, source_line from staged_van_counts where (select yes from has_no_price_list)
),
counted as (
    select
        part_key,
        mode(trim(raw) order by raw) as part_raw,
        count(distinct paper) as papers,
        bool_and(place = 'job') as on_jobs_only,
        first(source_order order by source_order, source_line) as source_order,
        first(source_file order by source_order, source_line) as source_file,
        first(source_line order by source_order, source_line) as source_line
    from written
    where length(part_key) >= 3 and regexp_matches(part_key, '[0-9]') and part_key not in (select part_key from suppliers_own)
    group by part_key
),
judged as (
    select *, on_jobs_only and papers = 1 as is_rare from counted
),
-- two texts a sign apart (put in, left out, changed, or two swapped) share a text with at most one sign taken out
shortened as (
    select part_key, is_rare, unnest([part_key] || [part_key[:i - 1] || part_key[i + 1:] for i in range(1, length(part_key) + 1)]) as rest
    from judged
),
slips as (
    select r.part_key
    from shortened as r
    join shortened as k on k.rest = r.rest and not k.is_rare
    where r.is_rare
    union
    select r.part_key
    from judged as r
    join judged as k on translate(k.part_key, 'OIL', '011') = translate(r.part_key, 'OIL', '011') and not k.is_rare
    where r.is_rare
)
select part_raw, part_key, source_order, source_file, source_line
from judged
anti join slips using (part_key)
order by part_key
