-- One row per brand as typed that is there twice or lacks its key, and one per brand that means none.
select typed_key, 'is there twice' as fault
from int_brands
group by typed_key
having count(*) > 1
union all
select typed_key, 'has no key'
from int_brands
where typed_key is null
union all
select typed_key, 'has no key of the brand it means'
from int_brands
where brand_key is null
