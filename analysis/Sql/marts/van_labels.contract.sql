-- One row per van that is named after someone, where settings keep the shop's people by initials.
create table van_labels (
    van_key  varchar not null,               -- initials and an identifier of the name
    van      varchar not null                -- what all tables and pages call the van
);
