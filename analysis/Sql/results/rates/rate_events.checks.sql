-- One row per call that counts twice for a basis, or counts for a rate without days at risk in its cell.
select basis, job_id, 'call counted twice' as fault
from rate_events
group by basis, job_id
having count(*) > 1
union all
select e.basis, e.job_id, 'event without exposure' as fault
from rate_events as e
left join unit_days as d
    using (basis, appliance_type, brand, model_family, age_band, month)
where e.basis in ('register_unit_years', 'seen_unit_years') and d.unit_days is null
