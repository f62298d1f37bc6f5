-- One row per family and component that has parts.
select distinct fitments.model_family, coalesce(fitments.component, parts.component) as component
from fitments
join parts on parts.part_number = fitments.part_number
where coalesce(fitments.component, parts.component) is not null
order by fitments.model_family, component
