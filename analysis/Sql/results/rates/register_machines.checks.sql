-- One row where the kinds of the machines do not add up to the machines.
select *
from register_machines
where contract + household + kind_unknown <> machines or type_unknown > machines
