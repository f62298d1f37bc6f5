-- One row per model number of a brand that stands twice.
select model_number, brand, 'stands twice' as fault from models group by model_number, brand having count(*) > 1
