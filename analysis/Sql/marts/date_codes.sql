-- One row per rule learned from dated serials. jobs_aged counts by brand, because the store keeps no serial.
with aged as (
    select compact_key(brand) as brand_key, count(*) as jobs
    from jobs
    where age_basis = 'date code'
    group by compact_key(brand)
)
select
    c.brand,
    c.serial_form,
    c.date_code,
    c.rule,
    c.in_use,
    c.basis,
    c.confirming,
    c.contradicting,
    c.confirming_examples,
    c.contradicting_examples,
    case when c.in_use then coalesce(a.jobs, 0) else 0 end as jobs_aged,
    c.pattern,
    c.year_letters,
    c.year_of_first,
    c.cycle_years,
    c.month_letters,
    c.weeks
from learned_date_codes as c
left join aged as a on a.brand_key = compact_key(c.brand)
order by c.brand, c.serial_form, c.date_code
