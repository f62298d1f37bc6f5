-- One row per count that cannot be.
select component, appliance_type, model_family, days
from part_ledger
where days <= 0 or parts < failures or failures < 0
