-- One row per year that jobs were opened in: its first and last day.
select
    make_date(year(opened_on), 1, 1) as first_day,
    make_date(year(opened_on), 12, 31) as last_day
from job_ages
group by all
order by first_day
