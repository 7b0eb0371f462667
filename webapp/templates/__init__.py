"""The page's templates, rendered once at bake: the job sheet, its parts to be cloned, and its marks."""
