-- One row per model number typed on jobs that no list and no learned family explains, most frequent first.
select
    compact_key(model_raw) as model_key,
    min(model_raw) as model,
    min(brand) as brand,
    min(appliance_type) as appliance_type,
    count(*) as times,
    min(job_id) as example
from jobs
where model_basis = 'unknown' and compact_key(model_raw) <> ''
group by compact_key(model_raw)
order by times desc, model_key
