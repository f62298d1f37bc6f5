-- One row per month of a series up to the month asked for, three years at most.
select m."month", m.known, m.expected, m.alarm_count, m.completeness,
    exists (
        from trend_alarms as a
        where a."month" = m."month" and a.appliance_type = m.appliance_type and a.component = m.component and a.model_family = m.model_family
    ) as alarm
from trend_months as m
where m.appliance_type = $type and m.component = $component and m.model_family = $family
    and m."month" <= $month::date and m."month" > ($month::date - interval 36 month)::date
order by m."month"
