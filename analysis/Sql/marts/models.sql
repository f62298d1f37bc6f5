-- One row per model number: of the list, or typed on jobs and put into a family that was learned.
with listed as (
    select model_number, model_family, family_basis, base, revision, appliance_type, brand, first_made, last_made, source_file, source_line
    from int_listed_models
),
learned as (
    select
        m.model_raw as model_number,
        x.model_family,
        case when x.model_family in (select model_family from int_answered_families) then 'reviewed' else 'learned' end as family_basis,
        m.model_key as base,
        null::varchar as revision,
        m.appliance_type,
        m.brand,
        null::date as first_made,
        null::date as last_made,
        null::varchar as source_file,
        null::integer as source_line
    from int_model_numbers as m
    join int_model_matches as x on x.brand_key = m.brand_key and x.model_key = m.model_key and x.model_raw = m.model_raw
    where not m.listed and x.family_is_learned
),
together as (
    from listed
    union all
    from learned
)
select
    model_number, model_family, family_basis, base, revision, appliance_type, brand, first_made, last_made, source_file, source_line
from together
order by model_number, brand, source_file, source_line
