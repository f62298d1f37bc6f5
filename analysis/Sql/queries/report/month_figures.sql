-- One row per month asked for (the month, the one before, the same a year earlier) that the data reaches.
select
    f.month, f.calls, f.still_open, f.end_not_told, f.visits_known, f.first_visit_share, f.first_visit_lower, f.first_visit_upper,
    'no closed repair of the month records its visits' as first_visit_missing,
    f.cause_known, f.no_part_share, f.no_part_lower, f.no_part_upper,
    case when f.cause_known > 0 then 'the log names no job that needed none' else 'no cause is known' end as no_part_missing,
    t.need as top_component, coalesce(t.calls, 0) as top_calls, t.share as top_share, t.lower as top_lower, t.upper as top_upper,
    f.family_unknown, f.age_unknown, f.complaint_unknown
from month_figures as f
left join (
    from month_needs
    where need not in ('none', 'other_part')
    qualify row_number() over (partition by month order by calls desc, need) = 1
) as t using (month)
where f.month in ($month::date, ($month::date - interval 1 month)::date, ($month::date - interval 1 year)::date)
order by f.month
