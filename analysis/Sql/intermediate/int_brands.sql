-- One row per brand as typed, with the brand it means: matched by its letters, else the one known brand that differs by
-- one letter.
with writings as (
    select brand, sum(times) as times
    from (select brand, times from int_model_spellings union all select brand, 1 from staged_models)
    where brand is not null
    group by brand
),
trimmed as (
    select compact_key(brand) as typed_key, trim(brand) as writing, sum(times) as times, min(brand) as first_writing
    from writings
    group by compact_key(brand), trim(brand)
),
typed as (
    select typed_key, sum(times)::bigint as times, arg_min(writing, (-times, first_writing)) as writing
    from trimmed
    where typed_key <> ''
    group by typed_key
),
listed as (
    select compact_key(brand) as brand_key, mode(trim(brand) order by brand) as brand
    from staged_models
    where compact_key(brand) <> ''
    group by compact_key(brand)
),
-- without a model list, what is typed often is a brand
known as (
    from listed
    union all
    select typed_key, writing from typed where times >= 5 and not exists (from listed)
),
close as (
    select t.typed_key, min(k.brand_key) as brand_key, min(k.brand) as brand
    from typed as t
    join known as k on length(t.typed_key) >= 4 and damerau_levenshtein(t.typed_key, k.brand_key) = 1
    anti join known as own on own.brand_key = t.typed_key
    group by t.typed_key
    having count(*) = 1
)
select
    t.typed_key,
    -- an unknown brand must not keep a model number from being found
    coalesce(k.brand_key, c.brand_key, '') as brand_key,
    coalesce(k.brand, c.brand, t.writing) as brand
from typed as t
left join known as k on k.brand_key = t.typed_key
left join close as c on c.typed_key = t.typed_key
