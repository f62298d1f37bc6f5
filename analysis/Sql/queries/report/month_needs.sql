-- One row per component at fault in the month, with its share in the month before and a year earlier (null: the data
-- does not reach them).
with before as (
    from month_needs where month = ($month::date - interval 1 month)::date
),
year_ago as (
    from month_needs where month = ($month::date - interval 1 year)::date
)
select
    n.need, n.calls, n.cause_known, n.share, n.lower, n.upper,
    case when (select count(*) from before) > 0 then coalesce(b.share, 0) end as share_before,
    case when (select count(*) from year_ago) > 0 then coalesce(y.share, 0) end as share_year_ago
from month_needs as n
left join before as b using (need)
left join year_ago as y using (need)
where n.month = $month::date and n.need not in ('none', 'other_part')
order by n.calls desc, n.need
