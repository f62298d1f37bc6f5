-- One row per job: its appliance, its model as typed, and what this call says about when the appliance was built.
select
    j.place,
    j.job_id,
    j.opened_on,
    m.writing,
    coalesce(j.serial_key, p.unit_id) as unit_id,
    j.serial_candidates,
    j.purchased_on,
    j.made_on_from,
    j.made_on_to,
    j.opened_on - coalesce(j.age_stated_years * 365.25, j.age_stated_months * 365.25 / 12, j.age_stated_days)::integer as stated_on
from int_job_rows as j
join int_resolved_models as m
    on m.typed_brand is not distinct from j.brand
    and m.typed_type is not distinct from j.appliance_type
    and m.model_raw is not distinct from j.model_raw
    and m.model_key is not distinct from j.model_key
left join int_inferred_units as p using (place)
