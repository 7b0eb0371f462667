"""The budget: what a phone has to keep to, measured on an emulated one against a bare page's floor."""
