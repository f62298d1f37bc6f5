-- Fills units and jobs: $units registered appliances of one type, each with a Weibull life per component and the first failures that fall into a ten-year log.
create or replace temp table made as
select
    i,
    date '2006-01-01' + (hash(i, 1) % 6900)::integer as installed_on
from range($units) as r(i);

insert into units (unit_id, model_family, appliance_type, installed_on, registered)
select 'u' || i, 'F1', 'washer', installed_on, true
from made;

insert into jobs (job_id, opened_on, closed_on, closing_basis, unit_id, appliance_type, model_family, main_component, model_basis, age_basis, complaint_kind, outcome, source_file, source_line)
with lives as (
    select
        i,
        c,
        installed_on,
        -- Shapes run from 0.8 to 3.0 over the components; one appliance in twenty fails of each within 15 years.
        365.25 * 15 * power(-ln((hash(i, c, 2) % 1000003 + 0.5) / 1000003.0) / 0.05, 1 / (0.8 + 2.2 * c / ($components - 1))) as life_days
    from made
    cross join range($components) as r(c)
)

select
    'j' || i || '-' || c, installed_on + life_days::integer, installed_on + life_days::integer, 'closing day', 'u' || i, 'washer', 'F1',
    'component_' || c, 'exact', 'register', 'other', 'fixed_with_part', 'made', 1
from lives
where life_days < 8000 and installed_on + life_days::integer between date '2016-01-01' and date '2025-12-31'
    and life_days >= 1;
