-- One row per way of telling jobs of one number apart, and job number under it: whether its rows still contradict each
-- other. A number must determine the unit and the day.
with ways as (
    select
        *,
        unnest([
            {'way': 'number', 'apart': ''},
            {'way': 'year', 'apart': year(opened_on)::varchar},
            {'way': 'technician', 'apart': coalesce(technician, '')},
            {'way': 'technician and year', 'apart': concat_ws('/', technician, year(opened_on))},
            {'way': 'file', 'apart': regexp_replace(source_file, '[.][^./]*$', '')}
        ], recursive := true)
    from int_doubtful_job_rows
),
-- within one file nobody corrects a job by writing it again, unless each row says when
in_files as (
    select
        way,
        apart,
        job_number,
        source_order,
        min(opened_on) as first_day,
        max(opened_on) as last_day,
        min(serial_key) as least_serial,
        max(serial_key) as most_serial,
        count(serial_key) = count(*) as has_serials,
        min(place_key) as least_place,
        max(place_key) as most_place,
        min(model_key) as least_model,
        max(model_key) as most_model,
        min(appliance_type) as least_type,
        max(appliance_type) as most_type,
        min(complaint_text) as least_complaint,
        max(complaint_text) as most_complaint,
        count(updated_on) = count(*) and min(updated_on) < max(updated_on) as is_dated
    from ways
    group by way, apart, job_number, source_order
),
judged as (
    select
        *,
        case
            when least_serial < most_serial then true
            when least_serial = most_serial and has_serials then false
            else coalesce(least_place < most_place, false) or coalesce(least_model < most_model, false) or coalesce(least_type < most_type, false)
        end as has_units
    from in_files
),
-- another file may correct a day or a model, as long as something says that it is the same unit
numbers as (
    select
        way,
        apart,
        job_number,
        bool_or(has_units or (first_day < last_day and not is_dated)) as in_file,
        count(*) as files,
        (count(least_serial) > 1 and min(least_serial) = max(most_serial))
            or (count(least_place) > 1 and min(least_place) = max(most_place))
            or (count(least_model) > 1 and min(least_model) = max(most_model))
            or (count(least_complaint) > 1 and min(least_complaint) = max(most_complaint)) as is_proven,
        min(first_day) < max(last_day)
            or coalesce(min(least_serial) < max(most_serial), false)
            or coalesce(min(least_model) < max(most_model), false)
            or coalesce(min(least_type) < max(most_type), false) as differs
    from judged
    group by way, apart, job_number
)
select
    way,
    apart,
    job_number,
    in_file or (files > 1 and differs and not coalesce(is_proven, false)) as contradicts
from numbers
