-- One row per model number on the model list, with its base, its revision, and its family as listed or learned.
with shared as (
    select brand_key, prefix, count(distinct model_key) as models
    from int_model_prefixes
    where listed
    group by brand_key, prefix
),
-- the revision is what follows the longest prefix that another model of the brand shares; it is short
based as (
    select p.brand_key, p.model_key, arg_max(p.prefix, length(p.prefix)) as base
    from int_model_prefixes as p
    join shared as s using (brand_key, prefix)
    where p.listed and s.models >= 2 and p.rest_length <= 4 and regexp_matches(p.prefix, '[0-9]')
    group by p.brand_key, p.model_key
),
grouped as (
    select p.brand_key, p.model_key, arg_max(p.prefix, length(p.prefix)) as prefix
    from int_model_prefixes as p
    join shared as s using (brand_key, prefix)
    where p.listed and s.models >= getvariable('family_min_models')
    group by p.brand_key, p.model_key
),
told as (
    select m.*, coalesce(b.base, m.model_key) as base, coalesce(g.prefix, b.base, m.model_key) as learned_family
    from int_model_numbers as m
    left join based as b using (brand_key, model_key)
    left join grouped as g using (brand_key, model_key)
    where m.listed
),
shared_names as (
    select learned_family from told where model_family is null group by learned_family having count(distinct brand_key) > 1
),
named as (
    select
        t.* exclude (learned_family),
        case when s.learned_family is null then t.learned_family else concat_ws(' ', t.brand, t.learned_family) end as learned_family
    from told as t
    left join shared_names as s using (learned_family)
),
-- of a model that the list puts into two families, the owner says which
meant as (
    select r.subject_key as model_key, min(r.answer) as model_family
    from review_collisions as r
    where r.fault_kind = 'model_in_two_families'
        and exists (select 1 from staged_models as m where m.model_key = r.subject_key and m.model_family = r.answer)
    group by r.subject_key
    having count(distinct r.answer) = 1
)
select
    t.brand_key,
    t.model_key,
    t.model_confusable,
    t.model_raw as model_number,
    t.model_pattern,
    coalesce(w.model_family, t.model_family, a.model_family, t.learned_family) as model_family,
    case
        when coalesce(w.model_family, t.model_family) is not null then 'listed'
        when a.model_family is not null then 'reviewed'
        else 'learned'
    end as family_basis,
    t.base,
    nullif(substr(t.model_key, length(t.base) + 1), '') as revision,
    t.appliance_type,
    t.brand,
    t.first_made,
    t.last_made,
    t.source_file,
    t.source_line
from named as t
left join meant as w on w.model_key = t.model_key and t.model_family is not null
left join int_answered_families as a on a.learned_family = t.learned_family
