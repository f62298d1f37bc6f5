-- One row per brand and model text as typed, with the model, or at least the family, that it stands for.
-- A pattern on the list tells only the family: which of its models was meant stays open.
with typed as (
    select distinct
        coalesce(b.brand_key, '') as brand_key,
        t.model_raw,
        t.model_key,
        t.model_confusable,
        upper(trim(t.model_raw)) as writing,
        -- the shop's commonest writing of what looks alike: O for 0, I for 1
        w.usual_key,
        w.usual_raw
    from int_model_spellings as t
    left join int_brands as b on b.typed_key = compact_key(t.brand)
    left join int_model_writings as w on w.brand_key = coalesce(b.brand_key, '') and w.model_key = t.model_key
    where t.model_key <> ''
),
listed as (
    select *, upper(model_number) as writing from int_listed_models
),
-- a prefix speaks for a family when every listed model that has it is of that family
telling as (
    select p.brand_key, p.prefix, min(m.model_family) as model_family
    from int_model_prefixes as p
    join int_listed_models as m using (brand_key, model_key)
    where p.listed
    group by p.brand_key, p.prefix
    having count(distinct m.model_family) = 1 and count(distinct m.model_key) >= getvariable('family_min_models')
),
learned_groups as (
    select p.brand_key, p.prefix
    from int_model_prefixes as p
    where not p.listed and length(p.prefix) >= 3
        -- if the list knows the brand, a number that fits none of its models is more likely misread than new
        and (
            (p.brand_key not in (select brand_key from int_listed_models) and (p.brand_key <> '' or not exists (from int_listed_models)))
            -- a family that the owner approved stays one when a list of other models comes
            or p.prefix in (select learned_family from int_answered_families)
        )
    group by p.brand_key, p.prefix
    having count(distinct p.model_key) >= getvariable('family_min_models')
),
brand_names as (
    select brand_key, min(brand) as brand from int_model_numbers group by brand_key
),
-- one prefix of two brands is two families
learned_names as (
    select
        g.brand_key,
        g.prefix,
        case when count(*) over (partition by g.prefix) > 1 then concat_ws(' ', b.brand, g.prefix) else g.prefix end as learned_family
    from learned_groups as g
    left join brand_names as b using (brand_key)
),
learned_families as (
    select l.brand_key, l.prefix, coalesce(a.model_family, l.learned_family) as model_family
    from learned_names as l
    left join int_answered_families as a using (learned_family)
),
-- a model of no family is its own, if it is typed often enough to be no slip, and is no character away from one of its brand
-- that the list has
own_families as (
    select
        m.brand_key,
        m.model_key,
        case when count(*) over (partition by upper(m.model_raw)) > 1 then concat_ws(' ', b.brand, upper(m.model_raw))
            else upper(m.model_raw) end as model_family
    from int_model_numbers as m
    left join brand_names as b on b.brand_key = m.brand_key
    where not m.listed and m.jobs >= 3 and length(m.model_key) >= 3
        and not exists (
            select 1 from listed as l where l.brand_key = m.brand_key and damerau_levenshtein(l.model_key, m.model_key) <= 1
        )
),
every_family as (
    select model_family from listed
    union
    select model_family from learned_families
    union
    select model_family from own_families
),
-- the owner's answers: a model of the list, else a family
answered as (
    select r.model_key, l.brand_key, l.model_number, l.model_family
    from review_models as r
    join listed as l on l.model_key = r.answer_key
    union all
    select r.model_key, '', null, f.model_family
    from review_models as r
    join every_family as f on f.model_family = r.answer
    where r.answer_key not in (select model_key from listed)
),
patterns as (
    select brand_key, model_family, unnest(string_split(model_pattern, '|')) as pattern from listed where model_pattern is not null
),
candidates as (
    select t.brand_key, t.model_raw, t.model_key, a.model_number, a.model_family, 0 as place, 'reviewed' as basis
    from typed as t
    join answered as a using (model_key)
    where a.brand_key = t.brand_key or a.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 1, 'exact'
    from typed as t
    join listed as l on l.model_key = t.model_key and l.writing = t.writing
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 2, 'compact'
    from typed as t
    join listed as l on l.model_key = t.model_key
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    -- where models differ only in look-alike characters, the owner has chosen one
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 3, 'reviewed'
    from typed as t
    join review_collisions as r on r.fault_kind = 'model_number_collision' and translate(r.subject_key, 'OIL', '011') = t.model_confusable
    join listed as l on l.model_key = r.answer_key and l.model_confusable = t.model_confusable
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, l.model_number, l.model_family, 4, 'confusable'
    from typed as t
    join listed as l on l.model_confusable = t.model_confusable
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, l.model_family, 5, 'base'
    from typed as t
    join listed as l on translate(l.base, 'OIL', '011') = t.model_confusable
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, l.model_family, 6, 'base'
    from typed as t
    join int_model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.usual_key and not p.listed and p.rest_length <= 4
    join listed as l on l.base = p.prefix and l.base <> l.model_key
    where l.brand_key = t.brand_key or l.brand_key = '' or t.brand_key = ''
    union all
    select t.brand_key, t.model_raw, t.model_key, null, p.model_family, 7, 'pattern'
    from typed as t
    join patterns as p on t.model_key like p.pattern
    where p.brand_key = t.brand_key or p.brand_key = '' or t.brand_key = ''
    union all
    select
        t.brand_key,
        t.model_raw,
        t.model_key,
        case when t.usual_key <> t.model_key then t.usual_raw end,
        g.model_family,
        1000 - length(g.prefix),
        case when t.usual_key <> t.model_key then 'confusable' else 'learned' end
    from typed as t
    join int_model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.usual_key and not p.listed
    join telling as g on g.prefix = p.prefix and (g.brand_key = t.brand_key or t.brand_key = '')
    where length(g.prefix) >= 3 or t.brand_key <> ''
    union all
    select
        t.brand_key,
        t.model_raw,
        t.model_key,
        case when t.usual_key <> t.model_key then t.usual_raw end,
        g.model_family,
        2000 - length(g.prefix),
        case when t.usual_key <> t.model_key then 'confusable' else 'learned' end
    from typed as t
    join int_model_prefixes as p on p.brand_key = t.brand_key and p.model_key = t.usual_key and not p.listed
    join learned_families as g on g.prefix = p.prefix and g.brand_key = t.brand_key
    union all
    select
        t.brand_key,
        t.model_raw,
        t.model_key,
        case when t.usual_key <> t.model_key then t.usual_raw end,
        o.model_family,
        3000,
        case when t.usual_key <> t.model_key then 'confusable' else 'learned' end
    from typed as t
    join own_families as o on o.brand_key = t.brand_key and o.model_key = t.usual_key
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
    -- true if the family is not in the list but was learned from typed numbers
    min(place) >= 1000 as family_is_learned
from closest
group by brand_key, model_raw, model_key
having count(distinct model_family) = 1
