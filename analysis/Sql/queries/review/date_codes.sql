-- One row per learned date code, those that wait for an answer first. counted_as: whether it is used until you answer.
select
    rule,
    case when in_use then 'yes' else 'no' end as counted_as,
    confirming,
    contradicting,
    confirming_examples,
    contradicting_examples,
    brand,
    serial_form,
    date_code,
    pattern,
    year_letters,
    year_of_first,
    cycle_years,
    month_letters,
    weeks
from date_codes
order by in_use, confirming desc, brand, serial_form, date_code
