-- One row per curve whose books do not balance, or whose families do not add up to their type.
select 'entries and exits differ' as fault, component, appliance_type, model_family, sum(entries) - sum(exits) as difference
from age_ledger
group by all
having sum(entries) <> sum(exits)
union all
select 'families and type differ', component, appliance_type, 'all',
    sum(failures) filter (model_family = 'all') - sum(failures) filter (model_family <> 'all')
from age_ledger
group by component, appliance_type
having sum(failures) filter (model_family = 'all') <> sum(failures) filter (model_family <> 'all')
union all
select 'count below nought', component, appliance_type, model_family, exits
from age_ledger
where entries < 0 or exits < 0 or failures < 0 or failures > exits
