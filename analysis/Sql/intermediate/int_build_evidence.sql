-- One row per job: what was known on its day about when its appliance was built, from this call and earlier ones.
-- materialize: view
with registered as (
    select unit_id, min(coalesce(purchased_on, installed_on)) as bought_on
    from int_register_units
    group by unit_id
)
select
    u.place,
    u.job_id,
    u.opened_on,
    u.unit_id,
    m.appliance_type,
    m.brand,
    m.model_number,
    m.model_family,
    m.model_basis,
    m.first_made,
    m.last_made,
    coalesce(e.serial_candidates, u.serial_candidates) as serial_candidates,
    coalesce(e.purchased_on, u.purchased_on, r.bought_on) as purchased_on,
    coalesce(e.made_on_from, u.made_on_from) as made_on_from,
    coalesce(e.made_on_to, u.made_on_to) as made_on_to,
    coalesce(e.stated_on, u.stated_on) as stated_on
from int_job_units as u
join int_resolved_models as m using (writing)
left join int_earlier_build_evidence as e on e.place = u.place
left join registered as r on r.unit_id = u.unit_id
