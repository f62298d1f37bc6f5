-- One row per appliance the shop knows: the day its age counts from, and from which day it can have been in use. Every
-- rate, curve and share by age counts from this day.
-- Age is the time since an appliance was built: the serial tells that for nearly all appliances, listed or not, and it is
-- what a technician has at hand. The day is the middle of the build interval, and no later than installation. Where the
-- build is not known to a year, the appliance is taken to be built within the year before installation, as a call about it
-- does (int_job_ages).
with known as (
    select
        unit_id,
        made_from + ((coalesce(made_to, made_from) - made_from) // 2)::integer as built_on,
        coalesce(made_to, made_from) - made_from as spread_days,
        installed_on,
        coalesce(installed_on, made_to, made_from) as used_from
    from units
)
select
    unit_id,
    case when spread_days <= 366 then least(built_on, installed_on) else installed_on - 183 end as born_on,
    case when spread_days <= 366 then 'built' when installed_on is not null then 'installed' end as born_basis,
    spread_days > 366 as spread_too_wide,
    used_from
from known
order by unit_id
