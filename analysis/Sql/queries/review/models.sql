-- One row per model number typed on jobs that no list and no learned family explains, and one per writing that was taken for
-- the shop's usual writing of a number that looks alike ('counted_as'); most frequent first.
select
    compact_key(model_raw) as model_key,
    min(model_raw) as model,
    min(brand) as brand,
    min(appliance_type) as appliance_type,
    count(*) as times,
    case when model_basis = 'confusable' then min(model_number) else '' end as counted_as,
    min(job_id) as example
from jobs
where compact_key(model_raw) <> ''
    and (model_basis = 'unknown' or (model_basis = 'confusable' and compact_key(model_number) not in (select model_key from int_listed_models)))
group by compact_key(model_raw), model_basis
order by times desc, model_key
