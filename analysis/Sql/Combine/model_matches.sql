-- One row per brand and model text as typed: the model or at least the family it stands for.
with typed as (
    select distinct coalesce(b.brand_key, '') as brand_key, model_raw, model_key, model_confusable, upper(trim(model_raw)) as writing
    from (
        select brand, model_raw, model_key, model_confusable from job_rows
        union all
        select brand, model_raw, model_key, model_confusable from staged_units
    ) as t
    left join brands as b on b.typed_key = compact_key(t.brand)
    where model_key <> ''
),
listed as (
    select *, upper(model_number) as writing from model_list
),
-- a prefix speaks for a family when every listed model that has it is of that family
telling as (
    select p.brand_key, p.prefix, min(m.model_family) as model_family
    from model_prefixes as p
    join model_list as m using (brand_key, model_key)
    where p.listed
    group by p.brand_key, p.prefix
    having count(distinct m.model_family) = 1 and count(distinct m.model_key) >= getvariable('family_min_models')
),
learned_groups as (
    select p.brand_key, p.prefix
    from model_prefixes as p
    where not p.listed and length(p.prefix) >= 3
        -- of a brand that the list knows, a number that fits none of its models is misread rather than new
        and p.brand_key not in (select brand_key from model_list)
        and (p.brand_key <> '' or not exists (from model_list))
    group by p.brand_key, p.prefix
    having count(distinct p.model_key) >= getvariable('family_min_models')
),
candidates as (
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 1 as place, 'exact' as basis
    from typed as t
    join listed as l on l.model_key = t.model_key and l.writing = t.writing
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 2, 'compact'
    from typed as t
    join listed as l on l.model_key = t.model_key
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 3, 'confusable'
    from typed as t
    join listed as l on l.model_confusable = t.model_confusable
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, l.model_family, 4, 'base'
    from typed as t
    join listed as l on translate(l.base, 'OIL', '011') = t.model_confusable
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, l.model_family, 5, 'base'
    from typed as t
    join model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.model_key and not p.listed and p.rest_length <= 4
    join listed as l on l.base = p.prefix and l.base <> l.model_key
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, g.model_family, 1000 - length(g.prefix), 'learned'
    from typed as t
    join model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.model_key and not p.listed
    join telling as g on g.prefix = p.prefix and (g.brand_key = t.brand_key or t.brand_key = '')
    where length(g.prefix) >= 3 or t.brand_key <> ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, g.prefix, 2000 - length(g.prefix), 'learned'
    from typed as t
    join model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.model_key and not p.listed
    join learned_groups as g on g.prefix = p.prefix and g.brand_key = t.brand_key
),
closest as (
    select * from candidates
    qualify place = min(place) over (partition by brand_key, model_raw, model_key)
)
select
    brand_key,
    model_raw,
    model_key,
    case when count(distinct model_number) = 1 and count(*) = count(model_number) then min(model_number) end as model_number,
    case when count(distinct model_family) = 1 then min(model_family) end as model_family,
    min(basis) as basis,
    -- true: the family is none of the list's, it was learned from what was typed
    min(place) >= 1000 as family_is_learned
from closest
group by brand_key, model_raw, model_key
having count(distinct model_family) = 1
