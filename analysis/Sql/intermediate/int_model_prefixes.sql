-- One row per model number and prefix of it, cut at a separator or between a letter and a digit.
with places as (
    select brand_key, model_key, listed, model_raw, unnest(range(1, length(model_raw))) as place
    from int_model_numbers
),
split as (
    select
        brand_key,
        model_key,
        listed,
        compact_key(left(model_raw, place)) as prefix,
        substr(model_raw, place, 1) as left_sign,
        substr(model_raw, place + 1, 1) as right_sign
    from places
)
select distinct brand_key, model_key, listed, prefix, length(model_key) - length(prefix) as rest_length
from split
where length(prefix) >= 2
    and length(prefix) < length(model_key)
    and (
        regexp_matches(right_sign, '[^A-Za-z0-9]')
        or (regexp_matches(left_sign, '[A-Za-z]') and regexp_matches(right_sign, '[0-9]'))
        or (regexp_matches(left_sign, '[0-9]') and regexp_matches(right_sign, '[A-Za-z]'))
    )
