-- One row per file that was read; read = loaded + duplicate + replaced + rejected.
create table loads (
    source_file   varchar not null,
    content_hash  varchar not null,
    kind          varchar not null,
    rows_read     bigint not null,
    loaded        bigint not null,
    duplicate     bigint not null,
    replaced      bigint not null,
    rejected      bigint not null,
    languages     varchar                    -- languages of its texts, such as 'de en'; null if not read
);
