-- One row per component at fault in the twelve months up to the month, with its share in the twelve months before (null:
-- they hold no known cause).
with known as (
    select need, calls, month > ($month::date - interval 12 month)::date as is_now
    from month_needs
    where month <= $month::date and month > ($month::date - interval 24 month)::date
),
needs as (
    select
        need,
        coalesce(sum(calls) filter (where is_now), 0)::bigint as calls,
        coalesce(sum(calls) filter (where not is_now), 0)::bigint as calls_before
    from known
    group by need
),
shares as (
    select need, calls, sum(calls) over ()::bigint as cause_known, calls_before / nullif(sum(calls_before) over (), 0) as share_year_ago
    from needs
)
select need, calls, cause_known, share_year_ago
from shares
where calls > 0 and need not in ('none', 'other_part')
order by calls desc, need
